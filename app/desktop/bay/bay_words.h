// What the bay says in words about a fastener.
#pragma once

#include <QString>
#include <QStringList>
#include <utility>
#include <vector>

#include "records.h"
#include "theme.h"

namespace steadyturn {

// "Oil drain plug", and where it sits: "engine, type B van".
QString componentWords(const Fastener& fastener);
// Stated first, then the other unit a workshop reads: N·m beside lbf·ft, lbf·ft beside N·m; anything else beside N·m.
std::pair<QString, QString> targetWords(const Fastener& fastener);
// "Window 22 … 28 N·m", or that none is stated and ±10 % is taken.
QString windowWords(const Fastener& fastener);
// About a plastic part; empty for any other.
struct PlasticWords {
  Tone tone = Tone::Caution;
  QString text;
};
std::optional<PlasticWords> plasticWords(const Fastener& fastener);
// Name and value of what else is known; absent facts are left out.
std::vector<std::pair<QString, QString>> factWords(const Fastener& fastener);

}  // namespace steadyturn
