#pragma once
// The symptom sheet on paper: for each thing that the eye sees the likeliest slips, with the first look and the proof.

#include "core/sheet/symptoms.h"
#include "ui/sheet/pages.h"

#include <string>

namespace tiepoint::ui {

/// Writes a PDF, or nothing. Returns why it failed, or nothing.
std::optional<QString> saveSymptomSheet(const std::string& title, const std::vector<EyeSymptom>& symptoms, Paper paper,
                                        const QString& path);

}  // namespace tiepoint::ui
