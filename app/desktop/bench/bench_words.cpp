#include "bench_words.h"

#include <QCoreApplication>

#include "risk_words.h"
#include "text.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Bench", text); }

}  // namespace

QString planWords(const Tool& tool, const CheckPlan& plan) {
  QString text;
  if (plan.exercisePulls > 0) {
    text = (plan.exercisePulls == 1 ? tr("Before the first reading: one pull at %1, not counted. ")
                                    : tr("Before the first reading: %2 pulls at %1, not counted. "))
               .arg(torqueText(tool.maximumTorque()));
    text.replace(QStringLiteral("%2"), QString::number(plan.exercisePulls));
  }
  return text + tr("%1 readings at each set-point, every one within %2. (%3)")
                    .arg(plan.readings)
                    .arg(plusMinusText(plan.limitPercent), fromText(plan.source));
}

QString verdictWords(const CheckResult& result, DecisionRule rule) {
  int all = 0;
  int outside = 0;
  for (const PointResult& point : result.points) {
    for (const double deviation : point.deviationsPercent) {
      ++all;
      if (!atMost(std::abs(deviation), result.limitPercent)) ++outside;
    }
  }
  const QString limit = plusMinusText(result.limitPercent);
  QString text;
  if (outside > 0) {
    text = tr("%1 of %2 readings outside %3").arg(outside).arg(all).arg(limit);
  } else if (all == 1) {
    text = tr("the one reading so far lies within %1").arg(limit);
  } else {
    text = tr("all %1 readings lie within %2").arg(all).arg(limit);
  }
  if (rule == DecisionRule::Guarded)
    text += tr(" (guarded: the mean must keep the limit less the expanded uncertainty)");
  return text;
}

QString riskWords(const CheckResult& result) { return fromText(riskInWords(result)); }

QStringList doubtWords(const BenchModel& model) {
  QStringList doubts;
  if (model.tool() && model.tool()->status == ToolStatus::Held) {
    doubts << tr("%1 is on hold: %2. A passing check leads to its release.")
                  .arg(fromText(model.tool()->id), fromText(model.tool()->statusReason));
  }
  for (const ReferenceDoubt& doubt : model.doubts()) doubts << fromText(doubt.text);
  return doubts;
}

QString waitingWords(const WaitingDraft& draft) {
  if (draft.setup) {
    const QString begun = tr("the bench set-up begun on %1, %2").arg(fromText(draft.tool), dateText(draft.date));
    if (draft.readings == 0) return begun + tr(" (a typed span)");
    return begun + (draft.readings == 1 ? tr(" (one reading)") : tr(" (%1 readings)").arg(draft.readings));
  }
  return (draft.readings == 1 ? tr("the one reading typed earlier for %2, %3")
                              : tr("the %1 readings typed earlier for %2, %3").arg(draft.readings))
      .arg(fromText(draft.tool), dateText(draft.date));
}

QStringList noteWords(const BenchModel& model) {
  QStringList notes;
  if (const int questions = model.questions(); questions > 0) {
    notes << (questions == 1 ? tr("One reading is questioned above; it counts as it was typed.")
                             : tr("%1 readings are questioned above; they count as they were typed.").arg(questions));
  }
  if (const auto& result = model.result()) {
    for (const Note& note : result->notes) {
      // The reference was named before the first reading.
      if (note.kind != NoteKind::ReferenceTooUncertain) notes << fromText(writeNote(note));
    }
    if (!result->notEvaluated.empty()) {
      QStringList sources;
      for (const std::string& source : result->notEvaluated)
        sources << fromText(source).replace(QLatin1Char('_'), QLatin1Char(' '));
      notes << tr("Not measured at this bench, counted as 0 in the uncertainty: %1")
                   .arg(sources.join(QStringLiteral(", ")));
    }
  }
  return notes;
}

QString savedWords(const SavedCheck& saved) {
  const Check& check = saved.check;
  QString text = tr("Check %1 is saved: %2 %3, %4.")
                     .arg(QString::number(check.id), fromText(check.tool), phaseText(check.phase),
                          fromText(writeVerdict(check.verdict)));
  if (check.corrects) text += tr(" It replaces check %1; both stay on record.").arg(*check.corrects);
  if (saved.due) text += tr(" Next due %1.").arg(dateText(saved.due));
  return text;
}

}  // namespace steadyturn
