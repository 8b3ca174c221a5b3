#include "service_drafts.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSettings>

#include "text.h"

namespace steadyturn {
namespace {

QString keyOf(const std::string& shopId) { return QStringLiteral("bay/services/") + fromText(shopId); }

QJsonObject writeList(const ServiceList& list) {
  QJsonArray marks;
  for (const std::string& mark : list.fasteners) marks.append(fromText(mark));
  return {{QStringLiteral("name"), fromText(list.name)}, {QStringLiteral("fasteners"), marks}};
}

ServiceList readList(const QJsonObject& written) {
  ServiceList list{.name = toText(written[QStringLiteral("name")].toString()), .fasteners = {}};
  for (const auto& mark : written[QStringLiteral("fasteners")].toArray()) {
    list.fasteners.push_back(toText(mark.toString()));
  }
  return list;
}

}  // namespace

ServiceDrafts keptServiceDrafts(const std::string& shopId) {
  ServiceDrafts drafts;
  const auto kept = QJsonDocument::fromJson(QSettings().value(keyOf(shopId)).toByteArray());
  for (const auto& each : kept.array()) {
    const QJsonObject draft = each.toObject();
    const auto from = draft.find(QStringLiteral("from"));
    std::optional<ServiceList> begunFrom;
    if (from != draft.end()) begunFrom = readList(from->toObject());
    drafts[begunFrom ? begunFrom->name : std::string()] = {
        .from = begunFrom, .typed = readList(draft[QStringLiteral("typed")].toObject())};
  }
  return drafts;
}

void keepServiceDrafts(const std::string& shopId, const ServiceDrafts& drafts) {
  if (drafts.empty()) return QSettings().remove(keyOf(shopId));
  QJsonArray kept;
  for (const auto& [name, draft] : drafts) {
    QJsonObject written{{QStringLiteral("typed"), writeList(draft.typed)}};
    if (draft.from) written[QStringLiteral("from")] = writeList(*draft.from);
    kept.append(written);
  }
  QSettings().setValue(keyOf(shopId), QJsonDocument(kept).toJson(QJsonDocument::Compact));
}

}  // namespace steadyturn
