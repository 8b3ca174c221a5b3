#include "fastener_card.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "act_guard.h"
#include "badge.h"
#include "bay_words.h"
#include "message_line.h"
#include "text.h"
#include "title.h"
#include "torque_display.h"
#include "window_scale.h"

namespace steadyturn {
namespace {

constexpr int factColumns = 3;
// A text longer than this needs the row for itself.
constexpr int longFact = 34;

}  // namespace

FastenerCard::FastenerCard(QWidget* parent)
    : QWidget(parent),
      title_(new QLabel(this)),
      release_(new Badge(this)),
      torque_(new TorqueDisplay(this)),
      window_(new QLabel(this)),
      scale_(new WindowScale(this)),
      plastic_(new MessageLine(this)),
      limit_(new QPushButton(tr("Propose a limit…"), this)) {
  makeTitle(*title_);
  title_->setWordWrap(true);
  window_->setWordWrap(true);
  plastic_->setLasting();
  auto* right = new QVBoxLayout;
  right->setSpacing(0);
  right->addWidget(window_);
  right->addWidget(scale_);
  auto* row = new QHBoxLayout;
  row->setSpacing(28);
  row->addWidget(torque_);
  row->addLayout(right, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  auto* head = new QHBoxLayout;
  head->addWidget(title_, 1);
  head->addWidget(release_);
  column->addLayout(head);
  column->addLayout(row);
  auto* shout = new QHBoxLayout;
  shout->addWidget(plastic_, 1);
  shout->addWidget(limit_);
  column->addLayout(shout);
  needs(*limit_, Act::EnterFastener);
  connect(limit_, &QPushButton::clicked, this, &FastenerCard::limitWanted);
}

void FastenerCard::display(const Fastener& fastener) {
  title_->setText(componentWords(fastener) + QStringLiteral("  (%1)").arg(fromText(fastener.id)));
  const auto [first, second] = targetWords(fastener);
  torque_->display(first, second);
  showDelivered(fastener, std::nullopt);
  if (const auto words = plasticWords(fastener)) {
    plastic_->say(words->tone, words->text);
  } else {
    plastic_->clear();
  }
  limit_->setVisible(fastener.needsPartLimit());
  release_->setLook(fastener.released() ? Look{Sign::Tick, Tone::Good, tr("released")}
                                        : Look{Sign::Pause, Tone::Bad, tr("NOT RELEASED")});
  showFacts(fastener);
}

void FastenerCard::showDelivered(const Fastener& fastener, const std::optional<Option>& option) {
  scale_->display(fastener, option);
  QString words = windowWords(fastener);
  if (option) {
    words += tr(". Bar: what %1 at %2 delivers (95 %)").arg(fromText(option->tool), torqueText(option->setting));
  }
  window_->setText(words);
}

void FastenerCard::showFacts(const Fastener& fastener) {
  delete facts_;
  facts_ = new QWidget(this);
  layout()->addWidget(facts_);
  auto* grid = new QGridLayout(facts_);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(10);
  grid->setVerticalSpacing(2);
  int cell = 0;
  for (const auto& [name, value] : factWords(fastener)) {
    const bool wide = value.size() > longFact;
    if (wide && cell % factColumns != 0) cell += factColumns - cell % factColumns;
    auto* nameLabel = new QLabel(name, facts_);
    nameLabel->setForegroundRole(QPalette::PlaceholderText);
    auto* valueLabel = new QLabel(value, facts_);
    valueLabel->setWordWrap(wide);
    valueLabel->setTextInteractionFlags(Qt::TextSelectableByMouse);
    valueLabel->setAccessibleName(name + QStringLiteral(": ") + value);
    const int row = cell / factColumns;
    const int column = 2 * (cell % factColumns);
    grid->addWidget(nameLabel, row, column, Qt::AlignTop);
    grid->addWidget(valueLabel, row, column + 1, 1, wide ? 2 * factColumns - 1 : 1);
    cell += wide ? factColumns : 1;
  }
  for (int column = 0; column < factColumns; ++column) grid->setColumnStretch(2 * column + 1, 1);
  facts_->show();
}

}  // namespace steadyturn
