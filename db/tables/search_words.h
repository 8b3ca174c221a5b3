// What was typed to find a fastener, as words: with what else they may be called, and with slips of the hand put
// right.
#pragma once

#include <QString>
#include <QStringList>
#include <string>
#include <vector>

#include "synonym_table.h"

namespace steadyturn {

// The words in small letters without accents; nothing but letters and digits passes, so that nothing typed can be
// read as a query's language.
QStringList searchWords(const std::string& typed);

// The words themselves, then with every phrase they hold or begin replaced by what means the same.
std::vector<QStringList> withSynonyms(const QStringList& words, const std::vector<SynonymGroup>& groups);

// The words themselves, then with words of four letters and more taken for the beginnings of `known` words that
// differ by one edit: a letter too many, too few, another one, or two changed about (optimal string alignment). Words
// with a digit stay as they are: an M8 is not an M6.
std::vector<QStringList> withoutSlips(const QStringList& words, const QStringList& known);

}  // namespace steadyturn
