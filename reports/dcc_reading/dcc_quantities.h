// The numbers of a certificate's results, list by list.
#pragma once

#include <QString>
#include <QXmlStreamReader>
#include <vector>

namespace steadyturn {

struct DccQuantity {
  QString refType;
  QString unit;                  // D-SI, "\newton\metre"
  std::vector<double> values;    // in that unit
  std::vector<double> expanded;  // expanded uncertainties; one for all, or one a value
  std::vector<double> coverage;  // coverage factors, likewise
};

// REQUIRES: the reader stands at the start of a list or of a lone quantity; afterwards at its end. Of nested
// quantities (hybrid) the first SI part is taken.
std::vector<DccQuantity> readQuantities(QXmlStreamReader& xml);

// Newton metres in one of the unit, 0 when it is no torque.
double newtonMetresIn(const QString& unit);
bool isPercent(const QString& unit);

}  // namespace steadyturn
