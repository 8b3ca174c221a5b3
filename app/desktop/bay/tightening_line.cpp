#include "tightening_line.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "act_guard.h"
#include "date_field.h"
#include "text.h"

namespace steadyturn {

TighteningLine::TighteningLine(Date today, QWidget* parent) : QWidget(parent) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setVerticalSpacing(2);
  int column = 0;
  const auto place = [&](QLabel* name, QWidget* field, int stretch) {
    name->setBuddy(field);
    if (field->accessibleName().isEmpty()) field->setAccessibleName(name->text().remove(QLatin1Char('&')));
    grid->addWidget(name, 0, column);
    grid->addWidget(field, 1, column);
    grid->setColumnStretch(column, stretch);
    ++column;
  };
  const auto line = [&](const QString& label, int stretch) {
    auto* made = new QLineEdit(this);
    place(new QLabel(label, this), made, stretch);
    connect(made, &QLineEdit::returnPressed, this, [this] {
      if (record_->isEnabled()) emit recordWanted();
    });
    return made;
  };
  job_ = line(tr("&Job"), 3);
  vehicle_ = line(tr("Vehi&cle"), 3);
  unit_ = new QLabel(tr("Set &to"), this);
  setting_ = new QLineEdit(this);
  setting_->setAccessibleName(tr("Setting of the wrench"));
  setting_->setAlignment(Qt::AlignRight);
  place(unit_, setting_, 2);
  date_ = new DateField(tr("Day"), this);
  date_->setDay(today);
  place(new QLabel(tr("&Day"), this), date_, 2);
  by_ = line(tr("B&y"), 2);
  record_ = new QPushButton(tr("&Record it"), this);
  grid->addWidget(record_, 1, column);
  ticks_ = new QHBoxLayout;
  seat_ = new QCheckBox(this);
  seal_ = new QCheckBox(tr("Se&al renewed"), this);
  ticks_->addWidget(seal_);
  ticks_->addWidget(seat_);
  ticks_->addStretch(1);
  grid->addLayout(ticks_, 2, 0, 1, column + 1);
  needs(*record_, Act::RecordTightening);
  connect(record_, &QPushButton::clicked, this, &TighteningLine::recordWanted);
  connect(setting_, &QLineEdit::returnPressed, this, [this] {
    if (record_->isEnabled()) emit recordWanted();
  });
  showFastener({});
  showOption(std::nullopt);
}

void TighteningLine::showFastener(const Fastener& fastener) {
  const QString seatCheck = fromText(fastener.seatCheck);
  seat_->setText(seatCheck.isEmpty() ? tr("S&eat checked") : tr("S&eat checked: %1").arg(seatCheck));
  seal_->setVisible(fastener.renew.value_or(false));
  for (QCheckBox* stage : stages_) delete stage;
  stages_.clear();
  const TighteningStages steps = fastener.steps();
  for (std::size_t i = 0; steps.size() > 1 && i < steps.size(); ++i) {
    const int place = static_cast<int>(i);
    auto* tick =
        new QCheckBox(tr("&%1: %2").arg(place + 1).arg(fromText(stageInWords(steps[i], fastener.unit))), this);
    ticks_->insertWidget(place, tick);
    stages_.push_back(tick);
  }
  readyForNext();
}

void TighteningLine::showJob(const QString& job, const QString& vehicle) {
  job_->setText(job);
  vehicle_->setText(vehicle);
}

void TighteningLine::showOption(const std::optional<Option>& option) {
  record_->setEnabled(option.has_value());
  record_->setText(option ? tr("&Record it with %1").arg(fromText(option->tool)) : tr("&Record it"));
  setting_->setEnabled(option.has_value());
  setting_->setText(option ? fromText(writeNumber(option->setting.value)) : QString());
  unit_->setText(option ? tr("Set &to, %1").arg(fromText(unitSign(option->setting.unit))) : tr("Set &to"));
}

TypedTightening TighteningLine::typed() const {
  // Stages count in their order: one that was left out ends the count.
  const auto open = std::ranges::find_if(stages_, [](const QCheckBox* stage) { return !stage->isChecked(); });
  return {.job = job_->text(),
          .vehicle = vehicle_->text(),
          .setting = setting_->text(),
          .by = by_->text(),
          .date = date_->day(),
          .seatChecked = seat_->isChecked(),
          .sealRenewed = seal_->isHidden() ? std::nullopt : std::optional(seal_->isChecked()),
          .stagesDone = stages_.empty() ? std::nullopt : std::optional(static_cast<int>(open - stages_.begin()))};
}

void TighteningLine::readyForNext() {
  for (QCheckBox* tick : findChildren<QCheckBox*>()) tick->setChecked(false);
}

}  // namespace steadyturn
