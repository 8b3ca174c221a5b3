#include "recall_page.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTableView>

#include "issue_file.h"
#include "message_line.h"
#include "path_line.h"
#include "table_look.h"
#include "text.h"
#include "writers.h"

namespace steadyturn {
namespace {

const QString byKey = QStringLiteral("recall/by");

// What the selected line says at worst, and the cautions that go with its part.
QString worstWords(const RecallLine& line) {
  const RecallFigure& worst = line.result.worstCase;
  QString words = RecallPage::tr("No. %1, at worst (%2 all along): below the window %3, above %4")
                      .arg(line.tightening.id)
                      .arg(percentText(worst.deviationPercent), probabilityText(worst.probabilityBelow),
                           probabilityText(worst.probabilityAbove));
  if (worst.probabilityOverPartLimit)
    words += RecallPage::tr(", over the part's limit %1").arg(probabilityText(*worst.probabilityOverPartLimit));
  words += QStringLiteral(". ");
  if (const auto& fleet = line.result.byFleet) {
    words += RecallPage::tr("By tools like it (%1 that day): below %2, above %3. ")
                 .arg(percentText(fleet->deviationPercent), probabilityText(fleet->probabilityBelow),
                      probabilityText(fleet->probabilityAbove));
  }
  if (line.fastener.plastic())
    words += RecallPage::tr("Plastic: look for cracks before you tighten it again, and renew the part in doubt. ");
  if (line.decision) {
    words += RecallPage::tr("Decided %1%2: %3.")
                 .arg(dateText(line.decision->date),
                      line.decision->by.empty() ? QString() : QStringLiteral(", ") + fromText(line.decision->by),
                      line.decision->reason.empty() ? fromText(writeRecallAction(line.decision->action))
                                                    : fromText(line.decision->reason));
  }
  return words;
}

}  // namespace

RecallPage::RecallPage(OpenShop& shop, MessageLine* message, QWidget* parent)
    : QWidget(parent),
      shop_(shop),
      message_(message),
      words_(new QLabel(this)),
      line_(new QLabel(this)),
      byVehicle_(new QCheckBox(tr("O&ne vehicle after the other"), this)),
      table_(new QTableView(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  words_->setWordWrap(true);
  auto* head = new QHBoxLayout;
  head->addWidget(words_, 1);
  head->addWidget(byVehicle_);
  column->addLayout(head);
  table_->setModel(&model_);
  dressTable(*table_, tr("Tightenings in doubt"));
  setColumns(*table_, {9, 11, 13, 10, 0, 12, 11, 10, 10, 11, 15});
  column->addWidget(table_, 1);
  line_->setWordWrap(true);
  line_->setMinimumHeight(2 * line_->fontMetrics().height());
  column->addWidget(line_);
  column->addLayout(makeDecision());
  column->addLayout(makeEnd());
  connect(byVehicle_, &QCheckBox::toggled, this, &RecallPage::tell);
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &RecallPage::tellLine);
}

QLayout* RecallPage::makeDecision() {
  reason_ = new QLineEdit(this);
  reason_->setAccessibleName(tr("Reason, or what was done"));
  by_ = new QLineEdit(QSettings().value(byKey).toString(), this);
  by_->setAccessibleName(tr("Decided by"));
  by_->setMaximumWidth(180);
  auto* reasonLabel = new QLabel(tr("&Reason, or what was done"), this);
  reasonLabel->setBuddy(reason_);
  auto* byLabel = new QLabel(tr("B&y"), this);
  byLabel->setBuddy(by_);
  accept_ = new QPushButton(tr("Accept as it &is"), this);
  retorque_ = new QPushButton(tr("Re-tor&que"), this);
  replace_ = new QPushButton(tr("Repl&ace the part"), this);
  auto* row = new QHBoxLayout;
  row->addWidget(reasonLabel);
  row->addWidget(reason_, 1);
  row->addWidget(byLabel);
  row->addWidget(by_);
  for (auto* button : {accept_, retorque_, replace_}) row->addWidget(button);
  connect(accept_, &QPushButton::clicked, this, [this] { decide(RecallAction::Accept); });
  connect(retorque_, &QPushButton::clicked, this, [this] { decide(RecallAction::Retorque); });
  connect(replace_, &QPushButton::clicked, this, [this] { decide(RecallAction::ReplacePart); });
  return row;
}

QLayout* RecallPage::makeEnd() {
  report_ = new PathLine(PathLine::Direction::Write, tr("File for the recall report"), tr("&Write report"),
                         tr("PDF (*.pdf);;CSV (*.csv)"), this);
  close_ = new QPushButton(tr("&Close the recall"), this);
  auto* label = new QLabel(tr("R&eport"), this);
  label->setBuddy(report_);
  auto* row = new QHBoxLayout;
  row->addWidget(label);
  row->addWidget(report_, 1);
  row->addWidget(close_);
  connect(report_, &PathLine::confirmed, this, [this] {
    if (!report_->wouldReplace()) return writeReport();
    message_->say(Tone::Caution, tr("%1 exists already.").arg(report_->path()), {{tr("&Use that name"), [this] {
                                                                                    report_->agreeToReplace();
                                                                                    writeReport();
                                                                                  }}});
  });
  connect(close_, &QPushButton::clicked, this, &RecallPage::close);
  return row;
}

const RecallLine* RecallPage::selected() const { return model_.lineAt(table_->currentIndex().row()); }

void RecallPage::open(const std::string& tool) {
  reason_->clear();
  take(shop_.shop().recall(tool), 0);
  table_->setFocus(Qt::OtherFocusReason);
}

void RecallPage::take(Result<RecallList> list, std::int64_t stayAt) {
  if (!list) return message_->sayProblems(list.error());
  list_ = std::move(*list);
  tell();
  const int row = stayAt == 0 ? 0 : model_.nextUndecided(model_.rowOf(stayAt));
  if (model_.rowCount() > 0) table_->setCurrentIndex(model_.index(row < 0 ? model_.rowOf(stayAt) : row, 0));
  tellLine();
}

void RecallPage::tell() {
  if (!list_) return;
  const RecallLine* before = selected();
  const std::int64_t stay = before ? before->tightening.id : 0;
  model_.show(list_->tightenings, byVehicle_->isChecked());
  if (const int row = model_.rowOf(stay); row >= 0) table_->setCurrentIndex(model_.index(row, 0));
  const QString tool = fromText(list_->tool);
  if (!list_->foundBad) {
    words_->setText(tr("%1 has no failed check: nothing is in doubt.").arg(tool));
  } else {
    const QString good = list_->lastGood ? dateText(list_->lastGood) : tr("none on record");
    QString words =
        tr("<b>%1</b> was found bad on <b>%2</b>; last good check: <b>%3</b>. %4 tightenings in between, %5 still "
           "to be decided. %6; a joint is safe only when someone has seen it.")
            .arg(tool.toHtmlEscaped(), dateText(list_->foundBad), good)
            .arg(list_->tightenings.size())
            .arg(list_->undecided())
            .arg(list_->lastGood ? tr("Deviation interpolated between the two checks")
                                 : tr("The deviation found bad is taken for all the days before"));
    if (!list_->borrowed.empty()) words += QStringLiteral(" %1.").arg(fromText(list_->borrowed).toHtmlEscaped());
    if (list_->closing)
      words += tr(" <b>Closed on %1%2.</b>")
                   .arg(dateText(list_->closing->date),
                        list_->closing->by.empty() ? QString()
                                                   : tr(" by ") + fromText(list_->closing->by).toHtmlEscaped());
    words_->setText(words);
  }
  tellLine();
}

void RecallPage::tellLine() {
  const RecallLine* line = selected();
  line_->setText(line ? worstWords(*line) : QString());
  const bool open = list_ && list_->foundBad && !list_->closing;
  const bool decidable = open && line != nullptr && !shop_.shop().readOnly();
  for (QWidget* widget : std::initializer_list<QWidget*>{reason_, by_, accept_, retorque_, replace_})
    widget->setEnabled(decidable);
  close_->setEnabled(open && list_->undecided() == 0 && !shop_.shop().readOnly());
  close_->setToolTip(open && list_->undecided() > 0 ? tr("Every tightening has to be decided first.") : QString());
  report_->setActionEnabled(list_ && list_->foundBad);
  if (list_ && list_->foundBad)
    report_->suggest(QStringLiteral("recall-%1-%2.pdf").arg(fromText(list_->tool)).arg(list_->failedCheck));
}

void RecallPage::decide(RecallAction action) {
  const RecallLine* line = selected();
  if (!line) return;
  const std::int64_t tightening = line->tightening.id;
  auto list = shop_.shop().decideRecall(list_->tool, {.tightening = tightening,
                                                      .action = action,
                                                      .reason = toText(reason_->text().trimmed()),
                                                      .by = toText(by_->text().trimmed())});
  if (!list) {
    message_->sayProblems(list.error());
    return reason_->setFocus(Qt::OtherFocusReason);
  }
  message_->clear();
  QSettings().setValue(byKey, by_->text().trimmed());
  reason_->clear();
  take(std::move(list), tightening);
}

void RecallPage::close() {
  auto list = shop_.shop().closeRecall(list_->tool, toText(by_->text().trimmed()), toText(reason_->text().trimmed()));
  if (!list) return message_->sayProblems(list.error());
  message_->say(Tone::Good, tr("The recall of %1 is closed.").arg(fromText(list_->tool)));
  take(std::move(list), 0);
}

void RecallPage::writeReport() {
  const auto material = shop_.shop().recallReport(list_->tool);
  if (!material) return message_->sayProblems(material.error());
  const bool csv = report_->path().endsWith(QLatin1String(".csv"), Qt::CaseInsensitive);
  const auto document = buildRecallReport(*material);
  const Result<IssuedFile> done =
      issueFile(shop_.shop(), {.what = "recall", .id = list_->tool}, report_->path(),
                [&](QIODevice& out) { return csv ? writeCsv(document, out) : writePdf(document, out); });
  if (!done) return message_->sayProblems(done.error());
  report_->rememberFolder();
  sayIssued(*message_, *done);
}

}  // namespace steadyturn
