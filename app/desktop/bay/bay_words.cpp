#include "bay_words.h"

#include <QCoreApplication>

#include "text.h"

namespace steadyturn {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Bay", text); }

}  // namespace

QString componentWords(const Fastener& fastener) {
  const QString component = fromText(fastener.component);
  return fastener.assembly.empty() ? component : component + QStringLiteral(" – ") + fromText(fastener.assembly);
}

std::pair<QString, QString> targetWords(const Fastener& fastener) {
  const StatedTorque stated = fastener.targetTorque();
  const Unit other = stated.unit == Unit::NewtonMetre ? Unit::PoundForceFoot : Unit::NewtonMetre;
  return {torqueText(stated), torqueText(convert(stated, other), 3)};
}

QString windowWords(const Fastener& fastener) {
  const QString sign = fromText(unitSign(fastener.unit));
  if (fastener.low && fastener.high) {
    return tr("Window %1 … %2 %3")
        .arg(fromText(writeRounded(*fastener.low)), fromText(writeRounded(*fastener.high)), sign);
  }
  return tr("No window is stated: ±10 % of the target is taken, %1 … %2 %3")
      .arg(fromText(writeRounded(fastener.target * 0.9)), fromText(writeRounded(fastener.target * 1.1)), sign);
}

std::optional<PlasticWords> plasticWords(const Fastener& fastener) {
  if (!fastener.plastic()) return std::nullopt;
  if (fastener.needsPartLimit()) {
    return PlasticWords{Tone::Bad,
                        tr("PLASTIC – NO LIMIT ON RECORD. Don't tighten it by torque until the part's limit is known "
                           "and entered.")};
  }
  const QString limit = torqueText({*fastener.partLimit, fastener.unit});
  if (!fastener.limitBasis.empty()) {
    return PlasticWords{Tone::Caution,
                        tr("PLASTIC – limit %1, a proposal and not the maker's value (%2). Never pass it.")
                            .arg(limit, fromText(fastener.limitBasis))};
  }
  return PlasticWords{Tone::Caution,
                      tr("PLASTIC – limit %1. Never pass it; a cracked housing shows only later.").arg(limit)};
}

std::vector<std::pair<QString, QString>> factWords(const Fastener& fastener) {
  std::vector<std::pair<QString, QString>> facts;
  const auto add = [&facts](const QString& name, const QString& value) {
    if (!value.isEmpty()) facts.emplace_back(name, value);
  };
  QString thread = fromText(fastener.thread);
  if (!fastener.propertyClass.empty())
    thread += (thread.isEmpty() ? QString() : QStringLiteral(", ")) + fromText(fastener.propertyClass);
  add(tr("Thread, class"), thread);
  add(tr("Drive"), fromText(fastener.drive));
  add(tr("Material"), fromText(fastener.partMaterial));
  if (fastener.partLimit && !fastener.plastic())
    add(tr("Part limit"), torqueText({*fastener.partLimit, fastener.unit}));
  add(tr("Seal"), fromText(fastener.seal));
  if (fastener.renew) add(tr("Renew"), *fastener.renew ? tr("every time") : tr("not needed"));
  add(tr("Lubrication"), fromText(fastener.lubrication));
  if (fastener.angleDeg) add(tr("Then turn on"), fromText(writeRounded(*fastener.angleDeg)) + QStringLiteral("°"));
  QString stages;
  for (const auto& stage : fastener.stages) {
    stages += (stages.isEmpty() ? QString() : QStringLiteral(", ")) + fromText(stageInWords(stage, fastener.unit));
  }
  add(tr("Stages"), stages);
  add(tr("Sequence"), fromText(fastener.sequence));
  add(tr("Seat check"), fromText(fastener.seatCheck));
  QString source = fromText(fastener.source);
  if (!fastener.revision.empty()) source += tr(", revision %1").arg(fromText(fastener.revision));
  if (fastener.released()) source += tr("; approved by %1").arg(fromText(fastener.approvedBy));
  add(tr("Source"), source);
  return facts;
}

}  // namespace steadyturn
