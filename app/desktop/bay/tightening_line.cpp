#include "tightening_line.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

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
  seat_ = new QCheckBox(this);
  grid->addWidget(seat_, 2, 0, 1, column + 1);
  connect(record_, &QPushButton::clicked, this, &TighteningLine::recordWanted);
  connect(setting_, &QLineEdit::returnPressed, this, [this] {
    if (record_->isEnabled()) emit recordWanted();
  });
  showSeatCheck({});
  showOption(std::nullopt);
}

void TighteningLine::showSeatCheck(const QString& seatCheck) {
  seat_->setChecked(false);
  seat_->setText(seatCheck.isEmpty() ? tr("S&eat checked") : tr("S&eat checked: %1").arg(seatCheck));
}

void TighteningLine::showOption(const std::optional<Option>& option) {
  record_->setEnabled(option.has_value());
  record_->setText(option ? tr("&Record it with %1").arg(fromText(option->tool)) : tr("&Record it"));
  setting_->setEnabled(option.has_value());
  setting_->setText(option ? fromText(writeNumber(option->setting.value)) : QString());
  unit_->setText(option ? tr("Set &to, %1").arg(fromText(unitSign(option->setting.unit))) : tr("Set &to"));
}

TypedTightening TighteningLine::typed() const {
  return {.job = job_->text(),
          .vehicle = vehicle_->text(),
          .setting = setting_->text(),
          .by = by_->text(),
          .date = date_->day(),
          .seatChecked = seat_->isChecked()};
}

void TighteningLine::readyForNext() { seat_->setChecked(false); }

}  // namespace steadyturn
