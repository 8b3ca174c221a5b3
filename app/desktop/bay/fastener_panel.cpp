#include "fastener_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <utility>

#include "message_line.h"
#include "text.h"
#include "title.h"

namespace steadyturn {
namespace {

constexpr int fieldsARow = 4;

}  // namespace

FastenerPanel::FastenerPanel(Ask ask, QWidget* parent)
    : QWidget(parent),
      ask_(std::move(ask)),
      unit_(new QComboBox(this)),
      renew_(new QCheckBox(tr("rene&wed every time"), this)),
      title_(new QLabel(this)),
      sensible_(new QLabel(this)),
      questions_(new MessageLine(this)),
      limit_(new LimitLine(this)),
      message_(new MessageLine(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  makeTitle(*title_);
  column->addWidget(title_);
  auto* grid = new QGridLayout;
  grid->setVerticalSpacing(2);
  line(grid, "fastener", tr("Mark"), tr("needed"));
  line(grid, "component", tr("Component"), tr("needed"));
  line(grid, "assembly", tr("Assembly"));
  line(grid, "drive", tr("Drive"));
  line(grid, "thread", tr("Thread"), tr("such as M14x1.5"));
  line(grid, "property_class", tr("Property class"), tr("such as 8.8"));
  line(grid, "part_material", tr("Part material"), tr("plastic is guarded"));
  line(grid, "seal", tr("Seal"));
  line(grid, "target", tr("Target torque"), tr("needed"));
  for (const Unit unit : allUnits) unit_->addItem(fromText(unitSign(unit)), static_cast<int>(unit));
  place(grid, tr("Unit of all torques"), unit_);
  line(grid, "low", tr("Low"));
  line(grid, "high", tr("High"));
  line(grid, "part_limit", tr("Part's limit"));
  line(grid, "limit_basis", tr("Limit from, if not the part's data"));
  line(grid, "stages", tr("Stages"), tr("30; 60; 90 deg"));
  line(grid, "sequence", tr("Sequence of several screws"));
  line(grid, "lubrication", tr("Lubrication"));
  line(grid, "seat_check", tr("Seat check"), tr("what to see or feel"));
  line(grid, "source", tr("Source document"));
  line(grid, "revision", tr("Its revision"));
  line(grid, "by", tr("Entered by"));
  line(grid, "reason", tr("Why it changes"));
  place(grid, {}, renew_);
  column->addLayout(grid);
  sensible_->setWordWrap(true);
  sensible_->setForegroundRole(QPalette::PlaceholderText);
  questions_->setLasting();
  column->addWidget(sensible_);
  column->addWidget(questions_);
  column->addWidget(limit_);
  column->addWidget(message_);
  auto* row = new QHBoxLayout;
  auto* save = new QPushButton(tr("Sav&e it"), this);
  auto* cancel = new QPushButton(tr("Cance&l"), this);
  row->addWidget(save);
  row->addWidget(cancel);
  row->addStretch(1);
  column->addLayout(row);
  column->addStretch(1);
  connect(save, &QPushButton::clicked, this, &FastenerPanel::save);
  connect(cancel, &QPushButton::clicked, this, &FastenerPanel::cancelled);
  connect(unit_, &QComboBox::currentIndexChanged, this, &FastenerPanel::question);
  connect(lines_.at("part_limit"), &QLineEdit::textEdited, this, &FastenerPanel::limitTyped);
  connect(limit_, &LimitLine::takenOver, this, &FastenerPanel::takeOverLimit);
  show({});
  done();
}

void FastenerPanel::line(QGridLayout* grid, const char* field, const QString& label, const QString& hint) {
  auto* made = new QLineEdit(this);
  made->setPlaceholderText(hint);
  lines_[field] = made;
  place(grid, label, made);
  connect(made, &QLineEdit::textEdited, this, &FastenerPanel::question);
}

void FastenerPanel::place(QGridLayout* grid, const QString& label, QWidget* field) {
  const int row = 2 * (cell_ / fieldsARow);
  const int column = cell_ % fieldsARow;
  ++cell_;
  grid->addWidget(field, row + 1, column);
  grid->setColumnStretch(column, 1);
  if (label.isEmpty()) return;
  auto* name = new QLabel(label, this);
  name->setBuddy(field);
  field->setAccessibleName(label);
  grid->addWidget(name, row, column);
}

void FastenerPanel::begin(const QString& by) {
  start({}, by);
  lines_.at("fastener")->setFocus(Qt::TabFocusReason);
}

void FastenerPanel::beginRevision(const Fastener& from, const QString& by) {
  start({.from = from, .form = formOf(from), .trial = {.unit = from.unit}}, by);
  lines_.at("target")->setFocus(Qt::TabFocusReason);
}

void FastenerPanel::beginLimit(const Fastener& from, const QString& by) {
  beginRevision(from, by);
  limit_->takeFocus();
}

void FastenerPanel::start(Entry fresh, const QString& by) {
  keepTyped();
  fresh.form.texts["by"] = by;
  show(fresh);
  fresh_ = {.from = std::move(fresh.from), .form = typed(), .trial = limit_->typed()};
  if (const auto left = left_.find(subject()); left != left_.end()) showLeft(left->second);
}

void FastenerPanel::keepTyped() {
  Entry entry{.from = fresh_.from, .form = typed(), .trial = limit_->typed()};
  const auto left = left_.find(subject());
  if (left != left_.end()) entry.from = left->second.from;  // the revision that its words were typed over
  if (entry.form == fresh_.form && entry.trial == fresh_.trial) {
    left_.erase(subject());
  } else {
    left_[subject()] = std::move(entry);
  }
}

void FastenerPanel::showLeft(const Entry& left) {
  show(left);
  const bool revised = left.from && fresh_.from && left.from->number != fresh_.from->number;
  const QString words =
      revised ? tr("As you left it, not saved yet. Another revision has come since: start anew to see it.")
              : tr("As you left it, not saved yet.");
  message_->say(revised ? Tone::Caution : Tone::Info, words, {{tr("Sta&rt anew"), [this] { startAnew(); }}});
}

void FastenerPanel::startAnew() {
  left_.erase(subject());
  show(fresh_);
}

void FastenerPanel::done() {
  left_.erase(subject());
  fresh_.form = typed();
  fresh_.trial = limit_->typed();
}

void FastenerPanel::show(const Entry& entry) {
  const FastenerForm& form = entry.form;
  for (const auto& [field, made] : lines_) {
    made->setText(form.text(field));
    made->setCursorPosition(0);  // a long text is read from its beginning
  }
  const bool revision = entry.from.has_value();
  title_->setText(revision ? tr("A new revision of %1").arg(fromText(entry.from->id)) : tr("A new specification"));
  lines_.at("fastener")->setEnabled(!revision);
  lines_.at("reason")->setEnabled(revision);
  lines_.at("reason")->setPlaceholderText(revision ? tr("needed") : tr("for a revision"));
  unit_->setCurrentIndex(unit_->findData(static_cast<int>(form.unit)));
  renew_->setChecked(form.renew.value_or(false));
  takenBasis_ = form.text("limit_basis");
  limit_->show(entry.trial);
  message_->clear();
  question();
}

FastenerForm FastenerPanel::typed() const {
  FastenerForm form;
  for (const auto& [field, made] : lines_) form.texts[field] = made->text();
  form.unit = static_cast<Unit>(unit_->currentData().toInt());
  // Unticked says nothing about a part that has no seal.
  if (renew_->isChecked() || !form.text("seal").isEmpty()) form.renew = renew_->isChecked();
  return form;
}

void FastenerPanel::question() {
  questioned_ = false;
  sensible_->clear();
  questions_->clear();
  const std::optional<Fastener> fastener = typed().soFar();
  limit_->display(fastener);
  if (!fastener) return;
  const FastenerQuestions asked = ask_(*fastener);
  if (asked.sensible) {
    sensible_->setText(tr("%1 could sensibly take %2 to %3 (VDI 2230, friction 0.08 to 0.20; shares of it by common "
                          "practice).")
                           .arg(fromText(fastener->thread), torqueText(asked.sensible->low, 2),
                                torqueText(asked.sensible->high, 2)));
  }
  QStringList words;
  if (asked.unit) words << fromText(writeQuestion(*asked.unit, fastener->thread));
  if (asked.needsPartLimit) words << tr("A plastic part needs its limit: enter it from the part's own data.");
  if (!words.isEmpty()) questions_->say(asked.unit ? Tone::Bad : Tone::Caution, words.join(QLatin1Char('\n')));
}

void FastenerPanel::takeOverLimit(const LimitProposal& proposal) {
  auto limited = typed().soFar();
  if (!limited) return;
  takeOver(*limited, proposal);
  takenBasis_ = fromText(limited->limitBasis);
  // Without the noise of binary fractions: 9.8 rather than 9.799999999999999.
  lines_.at("part_limit")->setText(fromText(writeRounded(*limited->partLimit, 12)));
  lines_.at("limit_basis")->setText(takenBasis_);
  lines_.at("limit_basis")->setCursorPosition(0);
  QLineEdit* reason = lines_.at("reason");
  if (fresh_.from && reason->text().trimmed().isEmpty()) reason->setText(fromText(limitByTrialReason));
  question();
  message_->say(Tone::Info, tr("Limit %1 stands in the form, with where it comes from. Save it; it is released when "
                               "a second person approves it.")
                                .arg(torqueText(proposal.limit)));
}

// A limit typed anew is the part's own unless something else is said.
void FastenerPanel::limitTyped() {
  QLineEdit* basis = lines_.at("limit_basis");
  if (takenBasis_.isEmpty() || basis->text() != takenBasis_) return;
  basis->clear();
  question();
  message_->say(Tone::Info,
                tr("A limit typed anew is the part's own, from the maker's data. If it is not, say where it "
                   "is from."));
}

void FastenerPanel::save() {
  const FastenerForm form = typed();
  auto fastener = form.fastener();
  if (!fastener) return sayProblems(fastener.error());
  if (ask_(*fastener).unit && !questioned_) {
    questioned_ = true;
    return message_->say(Tone::Caution, tr("Look at the unit once more. If it is right, save again."));
  }
  if (!fresh_.from) return void(emit wanted(*fastener, std::nullopt));
  fastener->id = fresh_.from->id;
  emit wanted(*fastener, toText(form.text("reason")));
}

void FastenerPanel::sayProblems(const Problems& problems) { message_->sayProblems(problems); }

void FastenerPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit cancelled());
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return save();
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
