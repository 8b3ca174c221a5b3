#include "correction_line.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "bench_model.h"
#include "text.h"

namespace steadyturn {

CorrectionLine::CorrectionLine(BenchModel& model, QWidget* parent)
    : QFrame(parent), model_(model), question_(new QLabel(this)), reason_(new QLineEdit(this)) {
  reason_->setAccessibleName(tr("Reason of the correction"));
  reason_->setPlaceholderText(tr("needed: what was wrong with it"));
  question_->setBuddy(reason_);
  auto* giveUp = new QPushButton(tr("Don't correct it"), this);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(question_);
  row->addWidget(reason_, 1);
  row->addWidget(giveUp);
  hide();
  connect(reason_, &QLineEdit::textEdited, &model_, &BenchModel::setCorrectionReason);
  connect(reason_, &QLineEdit::returnPressed, this, &CorrectionLine::given);
  connect(giveUp, &QPushButton::clicked, this, &CorrectionLine::givenUp);
  connect(&model_, &BenchModel::toolPicked, this, &CorrectionLine::showCorrection);
}

void CorrectionLine::showCorrection() {
  const auto& corrects = model_.draft().corrects;
  setVisible(corrects.has_value());
  if (!corrects) return;
  question_->setText(tr("These readings replace check %1 of %2; both stay on record. &Why?")
                         .arg(QString::number(corrects->check), fromText(model_.tool()->id)));
  reason_->setText(corrects->reason);
}

}  // namespace steadyturn
