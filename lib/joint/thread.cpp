#include "thread.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <numbers>

#include "thread_table.h"

namespace steadyturn {

namespace {

// "m 14 × 1,5" → "M14x1.5".
std::string tidy(std::string_view typed) {
  std::string text;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    const char c = typed[i];
    if (typed.substr(i, 2) == "×") {
      text += 'x';
      ++i;
    } else if (c == ',') {
      text += '.';
    } else if (c == 'X' || c == '*') {
      text += 'x';
    } else if (c == 'm') {
      text += 'M';
    } else if (!std::isspace(static_cast<unsigned char>(c))) {
      text += c;
    }
  }
  return text;
}

std::optional<double> plainNumber(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::string sizesAccepted() {
  std::string text = "an ISO metric thread, coarse (M8) or fine (M14x1.5):";
  for (const ThreadSize& size : threadSizes()) text += fmt::format(" M{}", size.diameterMm);
  return text;
}

std::string pitchesAccepted(const ThreadSize& size) {
  std::string text = fmt::format("a pitch of M{} in ISO 261: {}", size.diameterMm, size.coarsePitchMm);
  for (const double pitch : size.fine) {
    if (pitch > 0) text += fmt::format(", {}", pitch);
  }
  return text;
}

}  // namespace

Result<Thread> parseThread(std::string_view typed, std::string_view field) {
  const auto refused = [&](std::string accepted) {
    return refuse({.field = std::string(field), .found = std::string(typed), .accepted = std::move(accepted)});
  };
  const std::string text = tidy(typed);
  if (!text.starts_with('M')) return refused(sizesAccepted());
  const std::size_t cross = text.find('x');
  const auto diameter = plainNumber(std::string_view(text).substr(1, cross == std::string::npos ? cross : cross - 1));
  const ThreadSize* size = diameter ? findThreadSize(*diameter) : nullptr;
  if (!size) return refused(sizesAccepted());
  if (cross == std::string::npos)
    return Thread{.diameterMm = *diameter, .pitchMm = size->coarsePitchMm, .coarse = true};

  const auto pitch = plainNumber(std::string_view(text).substr(cross + 1));
  if (pitch && *pitch == size->coarsePitchMm) {
    return Thread{.diameterMm = *diameter, .pitchMm = *pitch, .coarse = true};
  }
  if (!pitch || !(*pitch > 0) || std::ranges::find(size->fine, *pitch) == size->fine.end()) {
    return refused(pitchesAccepted(*size));
  }
  return Thread{.diameterMm = *diameter, .pitchMm = *pitch, .coarse = false};
}

std::string writeThread(const Thread& thread) {
  return thread.coarse ? fmt::format("M{}", thread.diameterMm)
                       : fmt::format("M{}x{}", thread.diameterMm, thread.pitchMm);
}

double pitchDiameterMm(const Thread& thread) { return thread.diameterMm - 0.649519 * thread.pitchMm; }

double minorDiameterMm(const Thread& thread) { return thread.diameterMm - 1.226869 * thread.pitchMm; }

double stressAreaMm2(const Thread& thread) {
  const double diameter = (pitchDiameterMm(thread) + minorDiameterMm(thread)) / 2;
  return std::numbers::pi / 4 * diameter * diameter;
}

std::optional<double> tabulatedStressAreaMm2(const Thread& thread) {
  const ThreadSize* size = findThreadSize(thread.diameterMm);
  if (!thread.coarse || !size) return std::nullopt;
  return size->stressAreaMm2;
}

}  // namespace steadyturn
