// Labels for tools, as PDF: one a page for a label printer, or a sheet of them.
#pragma once

#include <QIODevice>
#include <optional>
#include <span>
#include <string>

#include "date.h"
#include "label_sheet.h"
#include "problem.h"

namespace steadyturn {

struct ToolLabel {
  std::string tool{};         // its mark, printed large; the QR code carries it
  std::string description{};  // may be empty
  std::optional<Date> lastCheck{}, dueDate{};
  std::string state{};  // in words: "ready", "held"
};

// Writes the labels in the order given, row by row. Text is shrunk and wrapped until it fits: marks, dates and states
// are always whole; a description too long for the smallest legible print ends in "…". The QR code is what
// label_code.h says, level M, with its quiet zone of four modules. `printed` stands beside the state, which is true
// on that day. PDF/A-1b like the other papers.
//
// Refused before anything is written: no labels or a sheet that can't be; every tool whose words or code do not fit
// on its label (fields "labels[0].tool" …).
//
// REQUIRES: a QGuiApplication (any platform, "offscreen" does) for fonts; texts UTF-8.
Result<void> writeLabels(std::span<const ToolLabel> labels, const LabelSheet& sheet, Date printed, QIODevice& out);

}  // namespace steadyturn
