#include "bench_form.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include "bench_model.h"
#include "date_field.h"
#include "picker.h"
#include "text.h"

namespace steadyturn {

BenchForm::BenchForm(BenchModel& model, QWidget* parent) : QWidget(parent), model_(model) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setVerticalSpacing(2);
  tool_ = new Picker(tr("Tool"), tr("type its mark or description"), this);
  reference_ = new Picker(tr("Reference standard"), tr("type its mark"), this);
  by_ = new QLineEdit(this);
  date_ = new DateField(tr("Date"), this);
  phase_ = new QComboBox(this);
  phase_->addItem(phaseText(Phase::AsFound), static_cast<int>(Phase::AsFound));
  phase_->addItem(phaseText(Phase::AsLeft), static_cast<int>(Phase::AsLeft));
  direction_ = new QComboBox(this);
  for (const Direction direction : {Direction::Clockwise, Direction::Counterclockwise}) {
    direction_->addItem(fromText(writeDirection(direction)), static_cast<int>(direction));
  }
  unit_ = new QComboBox(this);
  for (const Unit unit : allUnits) unit_->addItem(fromText(unitSign(unit)), static_cast<int>(unit));
  temperature_ = new QLineEdit(this);
  humidity_ = new QLineEdit(this);
  note_ = new QLineEdit(this);
  for (QLineEdit* optional : {temperature_, humidity_, note_}) optional->setPlaceholderText(tr("may stay empty"));

  place(grid, 0, 0, 3, tr("&Tool"), tool_);
  place(grid, 0, 3, 3, tr("R&eference standard"), reference_);
  place(grid, 0, 6, 1, tr("Chec&ked by"), by_);
  place(grid, 2, 0, 1, tr("&Date"), date_);
  place(grid, 2, 1, 1, tr("&Phase"), phase_);
  place(grid, 2, 2, 1, tr("Dire&ction"), direction_);
  place(grid, 2, 3, 1, tr("Read &in"), unit_);
  place(grid, 2, 4, 1, tr("Te&mperature, °C"), temperature_);
  place(grid, 2, 5, 1, tr("Humidity, &%"), humidity_);
  place(grid, 2, 6, 1, tr("&Note"), note_);
  for (int column = 0; column < 6; ++column) grid->setColumnStretch(column, 2);
  grid->setColumnStretch(6, 3);

  connect(tool_, &Picker::picked, this, &BenchForm::toolWanted);
  connect(tool_, &Picker::unknown, this, [this](const QString& typed) { emit notFound(tr("tool"), typed); });
  connect(tool_, &Picker::entered, this, &BenchForm::entered);
  connect(reference_, &Picker::picked, this, &BenchForm::tellModel);
  connect(reference_, &Picker::entered, this, &BenchForm::entered);
  connect(reference_, &Picker::unknown, this,
          [this](const QString& typed) { emit notFound(tr("reference standard"), typed); });
  for (QLineEdit* line : {by_, temperature_, humidity_, note_}) {
    connect(line, &QLineEdit::textEdited, this, &BenchForm::tellModel);
  }
  connect(date_, &QDateEdit::dateChanged, this, &BenchForm::tellModel);
  connect(phase_, &QComboBox::currentIndexChanged, this, &BenchForm::tellModel);
  connect(direction_, &QComboBox::currentIndexChanged, this, &BenchForm::tellModel);
  connect(unit_, &QComboBox::currentIndexChanged, this, [this] {
    if (!showing_) model_.setUnit(static_cast<Unit>(unit_->currentData().toInt()));
  });
  connect(&model, &BenchModel::choicesChanged, this, &BenchForm::offerChoices);
  connect(&model, &BenchModel::toolPicked, this, &BenchForm::showDraft);
  offerChoices();
  showDraft();
}

void BenchForm::place(QGridLayout* grid, int row, int column, int span, const QString& label, QWidget* field) {
  auto* name = new QLabel(label, this);
  name->setBuddy(field);
  if (field->accessibleName().isEmpty()) field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
  grid->addWidget(name, row, column, 1, span);
  grid->addWidget(field, row + 1, column, 1, span);
}

void BenchForm::offerChoices() {
  std::vector<Picker::Item> tools;
  for (const Tool& tool : model_.tools()) {
    tools.push_back({fromText(tool.id), fromText(tool.description) + QStringLiteral(", ") + rangeText(tool)});
  }
  tool_->setItems(std::move(tools));
  std::vector<Picker::Item> references;
  for (const Reference& reference : model_.references()) {
    references.push_back({fromText(reference.id), fromText(reference.description)});
  }
  reference_->setItems(std::move(references));
}

void BenchForm::showDraft() {
  showing_ = true;
  const BenchDraft& draft = model_.draft();
  tool_->pick(model_.tool() ? fromText(model_.tool()->id) : QString());
  reference_->pick(draft.reference);
  by_->setText(draft.by);
  date_->setDay(draft.date);
  phase_->setCurrentIndex(phase_->findData(static_cast<int>(draft.phase)));
  direction_->setCurrentIndex(direction_->findData(static_cast<int>(draft.direction)));
  unit_->setCurrentIndex(unit_->findData(static_cast<int>(draft.unit)));
  temperature_->setText(draft.temperature);
  humidity_->setText(draft.humidity);
  note_->setText(draft.note);
  showing_ = false;
}

void BenchForm::setUnit(Unit unit) { unit_->setCurrentIndex(unit_->findData(static_cast<int>(unit))); }

void BenchForm::tellModel() {
  if (showing_) return;
  BenchDraft heading;
  heading.date = date_->day();
  heading.phase = static_cast<Phase>(phase_->currentData().toInt());
  heading.direction = static_cast<Direction>(direction_->currentData().toInt());
  heading.reference = reference_->pickedId();
  heading.by = by_->text();
  heading.temperature = temperature_->text();
  heading.humidity = humidity_->text();
  heading.note = note_->text();
  model_.setHeading(heading);
}

}  // namespace steadyturn
