#include "stored_text.h"

#include <QStringDecoder>
#include <algorithm>

#include "store_error.h"

namespace steadyturn {

namespace {

bool isAscii(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

}  // namespace

QString storedText(std::string_view utf8) {
  if (utf8.empty()) return QStringLiteral("");
  const auto size = static_cast<qsizetype>(utf8.size());
  if (isAscii(utf8)) return QString::fromLatin1(utf8.data(), size);
  QStringDecoder decoder(QStringDecoder::Utf8, QStringDecoder::Flag::Stateless);
  QString text = decoder(QByteArrayView(utf8.data(), size));
  if (decoder.hasError()) throw StoreError({.field = "text", .found = "", .accepted = "text in UTF-8"});
  // A leading byte order mark says nothing, and SQLite drops it from UTF-16: dropped here, row and ledger agree.
  while (text.startsWith(QChar(QChar::ByteOrderMark))) text.remove(0, 1);
  if (text.isEmpty()) return QStringLiteral("");
  return text.normalized(QString::NormalizationForm_C);
}

void normalise(std::string& utf8) {
  if (!isAscii(utf8)) utf8 = storedText(utf8).toStdString();
}

}  // namespace steadyturn
