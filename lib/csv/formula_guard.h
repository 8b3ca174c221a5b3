// A text cell that a spreadsheet would run as a formula is written so that it does not.
//
// The rule, both ways: a text that is any number of apostrophes (none, too) followed by one of
// = + - @ TAB CR gets one apostrophe more when it is written, and one less when it is read. Every other text
// stays as it is, a text that merely starts with an apostrophe too. So each text reads back as it was:
//   =1+1 ↔ '=1+1     '=1+1 ↔ ''=1+1     'twas ↔ 'twas
// Numbers are never guarded: -5 is a number to a spreadsheet as well.
#pragma once

#include <string_view>

namespace steadyturn {

// Whether `text` must be written with one apostrophe in front.
bool needsFormulaGuard(std::string_view text);

// The text that a cell stands for.
std::string_view withoutFormulaGuard(std::string_view cell);

}  // namespace steadyturn
