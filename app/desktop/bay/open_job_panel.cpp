#include "open_job_panel.h"

#include <QComboBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "text.h"

namespace steadyturn {

OpenJobPanel::OpenJobPanel(QWidget* parent)
    : QWidget(parent),
      job_(new QLineEdit(this)),
      vehicle_(new QLineEdit(this)),
      by_(new QLineEdit(this)),
      service_(new QComboBox(this)) {
  auto* form = new QFormLayout(this);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->addRow(new QLabel(tr("Open the sheet of a job"), this));
  const auto add = [&](const QString& label, QWidget* field) {
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    form->addRow(label, field);
  };
  add(tr("&Job to open"), job_);
  add(tr("Vehi&cle of the job"), vehicle_);
  add(tr("List of the servic&e"), service_);
  add(tr("Opened b&y"), by_);
  auto* open = new QPushButton(tr("Open &the sheet"), this);
  auto* cancel = new QPushButton(tr("Cance&l"), this);
  auto* row = new QHBoxLayout;
  row->addWidget(open);
  row->addWidget(cancel);
  row->addStretch(1);
  form->addRow(row);
  connect(open, &QPushButton::clicked, this, [this] { emit wanted(typed()); });
  connect(cancel, &QPushButton::clicked, this, &OpenJobPanel::cancelled);
}

void OpenJobPanel::begin(const std::vector<ServiceList>& services, const QString& by) {
  if (by_->text().isEmpty()) by_->setText(by);
  const QVariant taken = service_->currentData();
  service_->clear();
  service_->addItem(tr("no list"), QString());
  for (const ServiceList& service : services) service_->addItem(fromText(service.name), fromText(service.name));
  service_->setCurrentIndex(std::max(0, service_->findData(taken)));
  job_->setFocus(Qt::TabFocusReason);
}

void OpenJobPanel::done() {
  job_->clear();
  vehicle_->clear();
  by_->clear();
  service_->setCurrentIndex(0);
}

JobDraft OpenJobPanel::typed() const {
  return {.job = toText(job_->text().trimmed()),
          .vehicle = toText(vehicle_->text().trimmed()),
          .service = toText(service_->currentData().toString()),
          .fasteners = {},
          .date = {},
          .by = toText(by_->text().trimmed())};
}

void OpenJobPanel::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit cancelled());
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return void(emit wanted(typed()));
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
