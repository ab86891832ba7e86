#pragma once
// Sizes of a lesson on a screen, as shares of its height: a caption is a 19th, a question a 25th, answers a 34th, nothing under a 39th.

namespace tiepoint::ui {

inline constexpr double kCaptionLines = 19, kQuestionLines = 25, kAnswerLines = 34, kSmallestLines = 39;
inline constexpr double kLessonSideShare = 40.0 / 1080;  ///< at the window's sides
inline constexpr double kCaptionBandShare = 104.0 / 1080, kOverBoardShare = 46.0 / 1080;
inline constexpr double kQuestionShare = 64.0 / 1080, kAnswerShare = 82.0 / 1080, kAnswerGapShare = 20.0 / 1080;
inline constexpr double kDiagramShare = 300.0 / 1080;  ///< an answer that is a circuit diagram
inline constexpr double kTableRowShare = 58.0 / 1080;  ///< tables whose hands are counted
inline constexpr double kStepsShare = 72.0 / 1080;     ///< the row of small boards
inline constexpr double kSeenShare = 60.0 / 1080;      ///< what was seen, in a sentence
inline constexpr double kTablesShare = 120.0 / 1080;   ///< tables to tick
inline constexpr double kGhostShare = 0.285;           ///< of the width

}  // namespace tiepoint::ui
