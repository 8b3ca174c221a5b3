#include "dcc_quantities.h"

#include <array>
#include <cmath>

namespace steadyturn {
namespace {

constexpr int deepest = 32;  // elements within a quantity; a certificate has some six

std::vector<double> numbersIn(QXmlStreamReader& xml) {
  std::vector<double> numbers;
  for (const QString& word : xml.readElementText(QXmlStreamReader::SkipChildElements).simplified().split(' ')) {
    bool good = false;
    const double number = word.toDouble(&good);
    if (!good || !std::isfinite(number)) {
      xml.raiseError(QStringLiteral("“%1” is not a number").arg(word));
      return {};
    }
    numbers.push_back(number);
  }
  return numbers;
}

// A quantity's numbers stand under names that differ by release (expandedUnc, expandedMU) and by shape (a list, one
// value); what is told apart is only value, uncertainty and coverage factor.
void readInto(DccQuantity& quantity, QXmlStreamReader& xml, int depth) {
  if (depth > deepest) return xml.raiseError(QStringLiteral("nested too deeply"));
  const auto name = xml.name();
  if (name == u"value" || name == u"valueXMLList") {
    if (quantity.values.empty()) {
      quantity.values = numbersIn(xml);
    } else {
      xml.skipCurrentElement();  // the other half of a hybrid
    }
  } else if (name == u"unit" || name == u"unitXMLList") {
    const QString unit = xml.readElementText(QXmlStreamReader::SkipChildElements).simplified();
    if (quantity.unit.isEmpty()) quantity.unit = unit;
  } else if (name == u"valueExpandedMU" || name == u"valueExpandedMUXMLList" || name == u"uncertainty" ||
             name == u"uncertaintyXMLList") {
    if (quantity.expanded.empty()) {
      quantity.expanded = numbersIn(xml);
    } else {
      xml.skipCurrentElement();
    }
  } else if (name == u"coverageFactor" || name == u"coverageFactorXMLList") {
    if (quantity.coverage.empty()) {
      quantity.coverage = numbersIn(xml);
    } else {
      xml.skipCurrentElement();
    }
  } else if (name == u"measurementMetaData" || name == u"usedMethods" || name == u"influenceConditions" ||
             name == u"name" || name == u"description") {
    xml.skipCurrentElement();
  } else {
    while (xml.readNextStartElement()) readInto(quantity, xml, depth + 1);
  }
}

DccQuantity readQuantity(QXmlStreamReader& xml) {
  DccQuantity quantity;
  quantity.refType = xml.attributes().value(QLatin1String("refType")).toString();
  while (xml.readNextStartElement()) readInto(quantity, xml, 0);
  return quantity;
}

struct Prefix {
  const char* name;
  double factor;
};
// SI Brochure, 9th edition, table 7: those that torques are stated with.
constexpr std::array prefixes{Prefix{"", 1}, Prefix{"\\milli", 1e-3}, Prefix{"\\centi", 1e-2}, Prefix{"\\kilo", 1e3}};

std::vector<DccQuantity> readList(QXmlStreamReader& xml, int depth) {
  std::vector<DccQuantity> all;
  if (depth > deepest) xml.raiseError(QStringLiteral("nested too deeply"));
  while (xml.readNextStartElement()) {
    if (xml.name() == u"quantity") {
      all.push_back(readQuantity(xml));
    } else if (xml.name() == u"list") {
      const auto inner = readList(xml, depth + 1);
      all.insert(all.end(), inner.begin(), inner.end());
    } else {
      xml.skipCurrentElement();
    }
  }
  return all;
}

}  // namespace

std::vector<DccQuantity> readQuantities(QXmlStreamReader& xml) {
  if (xml.name() == u"quantity") return {readQuantity(xml)};
  return readList(xml, 0);
}

double newtonMetresIn(const QString& unit) {
  for (const auto& [name, factor] : prefixes) {
    if (unit == QString::fromLatin1(name) + QStringLiteral("\\newton\\metre")) return factor;
  }
  return 0;
}

bool isPercent(const QString& unit) { return unit == QStringLiteral("\\percent"); }

}  // namespace steadyturn
