#include "thread_page.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "joint_chart.h"
#include "problem_text.h"
#include "text.h"
#include "title.h"

namespace steadyturn {
namespace {

constexpr std::array classes{PropertyClass::C4_6, PropertyClass::C5_6, PropertyClass::C8_8, PropertyClass::C10_9,
                             PropertyClass::C12_9};

QString figuresOf(const JointResult& joint) {
  const QString proof = joint.proofLoadN
                            ? ThreadPage::tr("%1 kN").arg(fromText(writeRounded(*joint.proofLoadN / 1000)))
                            : ThreadPage::tr("not tabulated");
  return ThreadPage::tr(
             "Stress area %1 mm² · proof load (ISO 898-1) %2 · at friction 0.12: preload %3 kN, torque %4 N·m.\n"
             "VDI 2230 Part 1, 90 % of the yield strength, hexagon head on a medium clearance hole. Look at the "
             "maker's service data first.")
      .arg(fromText(writeRounded(joint.stressAreaMm2)), proof,
           fromText(writeRounded(joint.assemblyPreloadN / 1000, 3)),
           fromText(writeRounded(joint.tighteningTorque.value, 3)));
}

}  // namespace

ThreadPage::ThreadPage(QWidget* parent)
    : QWidget(parent),
      thread_(new QLineEdit(this)),
      class_(new QComboBox(this)),
      title_(new QLabel(this)),
      figures_(new QLabel(this)),
      chart_(new JointChart(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  makeTitle(*title_);
  auto* row = new QHBoxLayout;
  const auto add = [&](const QString& label, QWidget* field) {
    auto* name = new QLabel(label, this);
    name->setBuddy(field);
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    row->addWidget(name);
    row->addWidget(field);
  };
  add(tr("&Thread to judge"), thread_);
  add(tr("Property &class to judge"), class_);
  for (const PropertyClass cls : classes) class_->addItem(fromText(writePropertyClass(cls)));
  row->addStretch(1);
  auto* back = new QPushButton(tr("Back to the fast&ener"), this);
  row->addWidget(back);
  figures_->setWordWrap(true);
  column->addWidget(title_);
  column->addLayout(row);
  column->addWidget(figures_);
  column->addWidget(chart_, 1);
  connect(thread_, &QLineEdit::textEdited, this, &ThreadPage::work);
  connect(class_, &QComboBox::currentIndexChanged, this, &ThreadPage::work);
  connect(back, &QPushButton::clicked, this, &ThreadPage::left);
}

void ThreadPage::begin(const Fastener& fastener) {
  target_ = fastener.targetTorque().torque().newtonMetres();
  title_->setText(tr("Thread and joint: %1 (%2), %3")
                      .arg(fromText(fastener.component), fromText(fastener.id), torqueText(fastener.targetTorque())));
  thread_->setText(fromText(fastener.thread));
  const int known = class_->findText(fromText(fastener.propertyClass));
  class_->setCurrentIndex(known < 0 ? class_->findText(QStringLiteral("8.8")) : known);
  work();
  thread_->setFocus(Qt::TabFocusReason);
}

void ThreadPage::work() {
  const auto thread = parseThread(toText(thread_->text().trimmed()), "thread");
  const auto cls = parsePropertyClass(toText(class_->currentText()), "property_class");
  if (!thread || !cls) {
    figures_->setText(wordProblems(thread ? cls.error() : thread.error()));
    return chart_->display({}, target_);
  }
  const auto joint = evaluateJoint({.thread = *thread,
                                    .propertyClass = *cls,
                                    .friction = {.thread = 0.12, .head = 0.12},
                                    .utilisation = 0.9,
                                    .bearingDiameterMm = {}});
  const auto points = overFriction(*thread, *cls);
  if (!joint || !points) return figures_->setText(wordProblems(joint ? points.error() : joint.error()));
  figures_->setText(figuresOf(*joint));
  chart_->display(*points, target_);
}

void ThreadPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
