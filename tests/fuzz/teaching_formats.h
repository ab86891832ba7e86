#pragma once
// What readers of lessons, kits, pictures and observations promise; members of the table in formats.cpp. Each as Format says.

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::fuzz {

bool takeLesson(std::string_view bytes);
std::vector<std::string> lessonSamples();

bool takeKit(std::string_view bytes);
std::vector<std::string> kitSamples();

/// A picture with a bench inside.
bool takePicture(std::string_view bytes);
std::vector<std::string> pictureSamples();

/// What somebody saw at a real board, of a bench that ships.
bool takeObservation(std::string_view bytes);
std::vector<std::string> observationSamples();

}  // namespace tiepoint::fuzz
