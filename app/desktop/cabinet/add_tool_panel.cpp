#include "add_tool_panel.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "text.h"

namespace steadyturn {
namespace {

constexpr int fieldsARow = 5;

}  // namespace

AddToolPanel::AddToolPanel(QWidget* parent) : QFrame(parent) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 4, 0, 0);
  grid->setVerticalSpacing(2);
  id_ = line(grid, tr("Mark on the tool"), tr("needed"));
  description_ = line(grid, tr("&Description"));
  maker_ = line(grid, tr("Ma&ker"));
  serial_ = line(grid, tr("Serial &number"));
  drive_ = line(grid, tr("Output drive"));
  type_ = new QComboBox(this);
  type_->addItem(tr("I – indicating"), QStringLiteral("I"));
  type_->addItem(tr("II – setting"), QStringLiteral("II"));
  type_->setCurrentIndex(1);
  place(grid, tr("T&ype (ISO 6789-1)"), type_);
  class_ = new QComboBox(this);
  class_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  place(grid, tr("Class"), class_);
  minimum_ = line(grid, tr("Lo&west marked value"), tr("may stay empty"));
  maximum_ = line(grid, tr("Ma&ximum"), tr("needed"));
  unit_ = new QComboBox(this);
  for (const Unit unit : allUnits) unit_->addItem(fromText(unitSign(unit)), static_cast<int>(unit));
  place(grid, tr("&Unit"), unit_);
  resolution_ = line(grid, tr("One graduation"), tr("may stay empty"));
  interval_ = line(grid, tr("Che&ck every … days"), tr("empty: the shop's rule"));
  limit_ = line(grid, tr("Permitted deviation, %"), tr("empty: ISO 6789-1"));
  auto* add = new QPushButton(tr("&Add the tool"), this);
  auto* cancel = new QPushButton(tr("Cance&l"), this);
  add->setDefault(true);
  place(grid, {}, add);
  place(grid, {}, cancel);
  grid->setRowStretch(grid->rowCount(), 1);
  connect(type_, &QComboBox::currentIndexChanged, this, &AddToolPanel::offerClasses);
  connect(add, &QPushButton::clicked, this, [this] { emit wanted(typed()); });
  connect(cancel, &QPushButton::clicked, this, &AddToolPanel::cancelled);
  offerClasses();
}

void AddToolPanel::place(QGridLayout* grid, const QString& label, QWidget* field) {
  const int row = 2 * (cell_ / fieldsARow);
  const int column = cell_ % fieldsARow;
  ++cell_;
  grid->addWidget(field, row + 1, column);
  grid->setColumnStretch(column, 1);
  if (label.isEmpty()) return;
  auto* name = new QLabel(label, this);
  name->setBuddy(field);
  field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
  grid->addWidget(name, row, column);
}

QLineEdit* AddToolPanel::line(QGridLayout* grid, const QString& label, const QString& hint) {
  auto* field = new QLineEdit(this);
  field->setPlaceholderText(hint);
  place(grid, label, field);
  return field;
}

void AddToolPanel::offerClasses() {
  const ToolType type =
      type_->currentData().toString() == QStringLiteral("I") ? ToolType::Indicating : ToolType::Setting;
  class_->clear();
  for (const ToolClass cls :
       {ToolClass::A, ToolClass::B, ToolClass::C, ToolClass::D, ToolClass::E, ToolClass::F, ToolClass::G}) {
    if (!isDefined({type, cls})) continue;
    const QString letter = fromText(writeClass(cls));
    class_->addItem(letter + QStringLiteral(" – ") + fromText(describe({type, cls})), letter);
    class_->setItemData(class_->count() - 1, fromText(describe({type, cls})), Qt::ToolTipRole);
  }
}

void AddToolPanel::begin() {
  for (QLineEdit* field : findChildren<QLineEdit*>()) field->clear();
  id_->setFocus(Qt::TabFocusReason);
}

ToolForm AddToolPanel::typed() const {
  return {.id = id_->text(),
          .description = description_->text(),
          .maker = maker_->text(),
          .serial = serial_->text(),
          .drive = drive_->text(),
          .type = type_->currentData().toString(),
          .cls = class_->currentData().toString(),
          .minimum = minimum_->text(),
          .maximum = maximum_->text(),
          .resolution = resolution_->text(),
          .intervalDays = interval_->text(),
          .limitPercent = limit_->text(),
          .unit = static_cast<Unit>(unit_->currentData().toInt())};
}

void AddToolPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit cancelled());
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return void(emit wanted(typed()));
  QFrame::keyPressEvent(event);
}

}  // namespace steadyturn
