#include "dcc_reader.h"

#include <QStringDecoder>
#include <algorithm>
#include <cmath>

#include "dcc_quantities.h"

namespace steadyturn {
namespace {

constexpr qint64 largestFile = qint64{16} * 1024 * 1024;

Problem bad(std::string found, std::string accepted) {
  return {.field = "certificate", .found = std::move(found), .accepted = std::move(accepted)};
}

// One value of many: a list of one counts for all.
std::optional<double> at(const std::vector<double>& list, std::size_t index) {
  if (list.size() == 1) return list.front();
  if (index < list.size()) return list[index];
  return std::nullopt;
}

// The document's characters, by its mark or first bytes (XML 1.0, appendix F); nothing where they are no text.
std::optional<QString> decoded(const QByteArray& bytes) {
  QStringDecoder decoder(QStringConverter::encodingForData(bytes, u'<').value_or(QStringConverter::Utf8));
  QString text = decoder(bytes);
  return decoder.hasError() ? std::nullopt : std::optional(std::move(text));
}

// Whether a document type stands among what may come before the first element: space, comments and processing
// instructions (XML 1.0, 2.8). Asked before the parser sees the text: the entities that one declares can keep a
// parser busy for hours without a single character coming of it.
bool hasDocumentType(QStringView text) {
  const auto passed = [&](QStringView begin, QStringView end) {
    text = text.trimmed();
    if (!text.startsWith(begin)) return false;
    const auto at = text.indexOf(end, begin.size());
    text = at < 0 ? QStringView() : text.sliced(at + end.size());
    return true;
  };
  while (passed(u"<?", u"?>") || passed(u"<!--", u"-->")) {
  }
  return text.startsWith(u"<!DOCTYPE");
}

class Reader {
 public:
  explicit Reader(const QString& text) : xml_(text) {}

  Result<ReferenceCertificate> read() {
    while (!xml_.atEnd() && !xml_.isStartElement()) xml_.readNext();
    if (xml_.name() != u"digitalCalibrationCertificate") return refuse(notOne());
    readChildren();
    // Everything a document holds is read to its end: half a certificate is none.
    while (!xml_.atEnd() && !xml_.hasError()) xml_.readNext();
    if (xml_.hasError()) return refuse(notOne());
    if (certificate_.values == 0) {
      return refuse(bad("no expanded uncertainty of a torque or in per cent",
                        "a certificate whose results state one; else type the figures of the paper"));
    }
    return certificate_;
  }

 private:
  Problem notOne() const {
    return bad(xml_.hasError() ? "line " + std::to_string(xml_.lineNumber()) + ": " + xml_.errorString().toStdString()
                               : "another kind of document",
               "a Digital Calibration Certificate (XML, DCC 3)");
  }

  bool nextChild() {
    while (!xml_.atEnd()) {
      switch (xml_.readNext()) {
        case QXmlStreamReader::StartElement:
          return true;
        case QXmlStreamReader::EndElement:
          return false;
        default:
          break;
      }
    }
    return false;
  }

  void readChildren() {
    descend([this] {
      while (nextChild()) readElement();
    });
  }

  // Of the element and all within it, without going down call by call.
  std::string text() {
    QString text;
    for (int inside = 1; inside > 0 && !xml_.atEnd();) {
      switch (xml_.readNext()) {
        case QXmlStreamReader::StartElement:
          ++inside;
          break;
        case QXmlStreamReader::EndElement:
          --inside;
          text += QLatin1Char(' ');
          break;
        case QXmlStreamReader::Characters:
          text += xml_.text();
          break;
        default:
          break;
      }
    }
    return text.simplified().toStdString();
  }

  void readElement() {
    const auto name = xml_.name();
    if (name == u"uniqueIdentifier") {
      certificate_.number = text();
    } else if (name == u"endPerformanceDate") {
      const auto date = parseDate(text(), "certificate");
      if (date) certificate_.calibrated = *date;
    } else if (name == u"items") {
      readItems();
    } else if (name == u"calibrationLaboratory") {
      readLaboratory();
    } else if (name == u"data") {
      readData();
    } else if (name == u"influenceConditions" || name == u"usedMethods" || name == u"measuringEquipments") {
      xml_.skipCurrentElement();  // their data are no results
    } else {
      readChildren();
    }
  }

  void readItems() {
    while (nextChild()) {
      if (xml_.name() == u"name" && certificate_.description.empty()) {
        certificate_.description = text();
      } else if (xml_.name() == u"identification") {
        readIdentification();
      } else {
        descend([this] { readItems(); });
      }
    }
  }

  template <typename Read>
  void descend(Read read) {
    if (++depth_ > deepest) xml_.raiseError(QStringLiteral("nested too deeply"));
    read();
    --depth_;
  }

  void readIdentification() {
    const bool serial = xml_.attributes().value(QLatin1String("refType")).contains(QLatin1String("serialNo"));
    std::string issuer, value;
    while (nextChild()) {
      if (xml_.name() == u"issuer") {
        issuer = text();
      } else if (xml_.name() == u"value") {
        value = text();
      } else {
        xml_.skipCurrentElement();
      }
    }
    if (serial || (certificate_.serial.empty() && issuer == "manufacturer")) certificate_.serial = value;
  }

  void readLaboratory() {
    while (nextChild()) {
      if (xml_.name() == u"name" && certificate_.laboratory.empty()) {
        certificate_.laboratory = text();
      } else {
        descend([this] { readLaboratory(); });
      }
    }
  }

  void readData() {
    while (nextChild()) {
      if (xml_.name() == u"list" || xml_.name() == u"quantity") {
        take(readQuantities(xml_));
      } else {
        xml_.skipCurrentElement();
      }
    }
  }

  // What the list's values relate to: the reference value where one is stated, else the nominal one.
  static const DccQuantity* baseOf(const std::vector<DccQuantity>& list) {
    for (const char* kind : {"basic_referenceValue", "basic_nominalValue"}) {
      for (const auto& quantity : list) {
        if (quantity.refType.contains(QLatin1String(kind)) && newtonMetresIn(quantity.unit) > 0) return &quantity;
      }
    }
    return nullptr;
  }

  void take(const std::vector<DccQuantity>& list) {
    const DccQuantity* base = baseOf(list);
    if (base) takeRange(*base);
    for (const auto& quantity : list) {
      if (!isPercent(quantity.unit) && newtonMetresIn(quantity.unit) <= 0) continue;
      const bool error = quantity.refType.contains(QLatin1String("basic_measurementError"));
      for (std::size_t i = 0; i < quantity.values.size(); ++i) {
        if (const auto expanded = percent(quantity, base, at(quantity.expanded, i), i))
          takeUncertainty(quantity, i, *expanded);
        const auto relative = error ? percent(quantity, base, quantity.values[i], i) : std::nullopt;
        if (relative && std::abs(*relative) > std::abs(certificate_.errorPercent))
          certificate_.errorPercent = *relative;
      }
    }
  }

  void takeRange(const DccQuantity& base) {
    const double factor = newtonMetresIn(base.unit);
    for (const double value : base.values) {
      const StatedTorque torque{value * factor, Unit::NewtonMetre};
      if (!certificate_.low || torque.value < certificate_.low->value) certificate_.low = torque;
      if (!certificate_.high || torque.value > certificate_.high->value) certificate_.high = torque;
    }
  }

  void takeUncertainty(const DccQuantity& quantity, std::size_t index, double expanded) {
    ++certificate_.values;
    if (expanded <= certificate_.expandedUncertaintyPercent) return;
    certificate_.expandedUncertaintyPercent = expanded;
    certificate_.coverageFactor = at(quantity.coverage, index).value_or(2);
  }

  // A figure of the quantity in % of its base, or of its own value where the list has no base.
  std::optional<double> percent(const DccQuantity& quantity, const DccQuantity* base, std::optional<double> figure,
                                std::size_t index) {
    if (!figure) return std::nullopt;
    if (isPercent(quantity.unit)) return figure;
    const auto whole = base ? at(base->values, index) : at(quantity.values, index);
    if (!whole || *whole == 0) return std::nullopt;
    const double wholeFactor = newtonMetresIn(base ? base->unit : quantity.unit);
    const double percent = *figure * newtonMetresIn(quantity.unit) / (*whole * wholeFactor) * 100;
    if (!std::isfinite(percent))
      xml_.raiseError(QStringLiteral("%1 of %2 is beyond all measure").arg(*figure).arg(*whole));
    return percent;
  }

  static constexpr int deepest = 64;  // elements within elements; a certificate has some fifteen

  QXmlStreamReader xml_;
  int depth_ = 0;
  ReferenceCertificate certificate_;
};

}  // namespace

Result<ReferenceCertificate> readDcc(QIODevice& in) {
  if (in.size() > largestFile) {
    return refuse(bad(std::to_string(in.size()) + " bytes", "a certificate of at most 16 MB"));
  }
  const auto text = decoded(in.readAll());
  if (!text) return refuse(bad("bytes that are no text", "a certificate in UTF-8 or UTF-16"));
  if (hasDocumentType(*text)) return refuse(bad("a document type", "a certificate without one"));
  return Reader(*text).read();
}

}  // namespace steadyturn
