#include "dcc_xml.h"

namespace steadyturn {
namespace {

// XML 1.0 can't hold most control characters, not even escaped; and its notEmptyString wants something to stand
// there.
QString speakable(std::string_view utf8) {
  QString text = QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
  for (auto& c : text) {
    const char16_t code = c.unicode();
    const bool forbidden =
        (code < 0x20 && code != u'\t' && code != u'\n' && code != u'\r') || code == 0xfffe || code == 0xffff;
    if (forbidden) c = QChar::ReplacementCharacter;
  }
  return text.trimmed().isEmpty() ? QStringLiteral("not recorded") : text;
}

}  // namespace

DccXml::DccXml(QByteArray& bytes) : xml_(&bytes) {
  xml_.setAutoFormatting(true);
  xml_.setAutoFormattingIndent(2);
}

void DccXml::begin() {
  xml_.writeStartDocument();
  xml_.writeNamespace(QString::fromLatin1(dccNamespace), QStringLiteral("dcc"));
  xml_.writeNamespace(QString::fromLatin1(siNamespace), QStringLiteral("si"));
  xml_.writeStartElement(QString::fromLatin1(dccNamespace), QStringLiteral("digitalCalibrationCertificate"));
  xml_.writeAttribute(QStringLiteral("schemaVersion"), QStringLiteral("3.3.0"));
}

void DccXml::end() { xml_.writeEndDocument(); }

void DccXml::attributes(std::initializer_list<Attribute> all) {
  for (const auto& attribute : all) xml_.writeAttribute(QString::fromLatin1(attribute.name), attribute.value);
}

DccXml::Open DccXml::dcc(const char* name, std::initializer_list<Attribute> all) {
  xml_.writeStartElement(QString::fromLatin1(dccNamespace), QString::fromLatin1(name));
  attributes(all);
  return Open(xml_);
}

DccXml::Open DccXml::si(const char* name) {
  xml_.writeStartElement(QString::fromLatin1(siNamespace), QString::fromLatin1(name));
  return Open(xml_);
}

void DccXml::dccText(const char* name, std::string_view text, std::initializer_list<Attribute> all) {
  xml_.writeStartElement(QString::fromLatin1(dccNamespace), QString::fromLatin1(name));
  attributes(all);
  xml_.writeCharacters(speakable(text));
  xml_.writeEndElement();
}

void DccXml::siText(const char* name, std::string_view text) {
  xml_.writeTextElement(QString::fromLatin1(siNamespace), QString::fromLatin1(name), speakable(text));
}

void DccXml::dccContent(const char* name, std::string_view text) {
  const auto open = dcc(name);
  dccText("content", text);
}

}  // namespace steadyturn
