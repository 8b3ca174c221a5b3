#include "problem_text.h"

#include <QCoreApplication>
#include <QStringList>

#include "text.h"

namespace steadyturn {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Problem", text); }

QString fieldText(const std::string& field) {
  QString words = fromText(field);
  words.replace(QLatin1Char('_'), QLatin1Char(' '));
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  return words;
}

QString statement(const Problem& problem) {
  QString found = fromText(problem.found);
  switch (problem.kind) {
    case ProblemKind::BadInput:
      return found.isEmpty() ? QString() : tr("“%1” is not accepted").arg(found);
    case ProblemKind::NotFound:
      return tr("“%1” is not known in this shop").arg(found);
    case ProblemKind::Conflict:
      return found.isEmpty() ? tr("not possible now") : tr("“%1” is not possible now").arg(found);
    case ProblemKind::FileMissing:
      return tr("can't read “%1”").arg(found);
    case ProblemKind::Unavailable:
      return found.isEmpty() ? tr("the shop's database can't be used") : tr("can't use “%1”").arg(found);
    case ProblemKind::CannotCreate:
      return tr("can't write “%1”").arg(found);
    case ProblemKind::NotPermitted:
      return found.isEmpty() ? tr("not permitted") : tr("not permitted (%1)").arg(found);
    case ProblemKind::Cancelled:
      return tr("stopped; nothing was kept");
  }
  return found;
}

}  // namespace

QString wordProblem(const Problem& problem) {
  QString text = statement(problem);
  const QString accepted = fromText(problem.accepted);
  if (text.isEmpty()) {
    text = accepted;
  } else if (!accepted.isEmpty()) {
    text += QStringLiteral(": ") + accepted;
  }
  const QString field = fieldText(problem.field);
  if (!field.isEmpty()) text = field + QStringLiteral(" – ") + text;
  if (problem.line) text = tr("Line %1: ").arg(*problem.line) + text;
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text.endsWith(QLatin1Char('.')) ? text : text + QLatin1Char('.');
}

QString wordProblems(const Problems& problems) {
  constexpr std::size_t shown = 3;
  QStringList lines;
  for (std::size_t i = 0; i < problems.size() && i < shown; ++i) lines << wordProblem(problems[i]);
  if (problems.size() > shown) lines << tr("And %1 more.").arg(problems.size() - shown);
  return lines.join(QLatin1Char('\n'));
}

}  // namespace steadyturn
