#include "tool_panel.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>

#include "act_guard.h"
#include "badge.h"
#include "group_line.h"
#include "text.h"
#include "title.h"

namespace steadyturn {
namespace {

QString factsOf(const Tool& tool) {
  QStringList lines;
  lines << QStringLiteral("%1, %2").arg(fromText(describe(tool.kind)), rangeText(tool));
  QStringList mark;
  if (!tool.maker.empty()) mark << fromText(tool.maker);
  if (!tool.serial.empty()) mark << ToolPanel::tr("serial number %1").arg(fromText(tool.serial));
  if (!tool.drive.empty()) mark << fromText(tool.drive);
  if (!mark.isEmpty()) lines << mark.join(QStringLiteral(", "));
  const QString basis = tool.limitPercent
                            ? ToolPanel::tr("the tool's own limit")
                            : ToolPanel::tr("ISO 6789-1 type %1 class %2")
                                  .arg(fromText(writeType(tool.kind.type)), fromText(writeClass(tool.kind.cls)));
  lines << ToolPanel::tr("permitted deviation %1 (%2)").arg(plusMinusText(tool.permittedPercent()), basis);
  if (!tool.statusReason.empty()) {
    lines << QStringLiteral("%1: %2").arg(fromText(writeToolStatus(tool.status)), fromText(tool.statusReason));
  }
  return lines.join(QLatin1Char('\n'));
}

QString outlookOf(const ToolOverview& overview) {
  if (!overview.lastCheck)
    return ToolPanel::tr("No check is on record. It can't be offered in the Bay until it has one.");
  QStringList lines;
  if (overview.predictedPercent && overview.worstTarget) {
    QString line = ToolPanel::tr("Today at %1: %2")
                       .arg(torqueText(*overview.worstTarget), percentText(*overview.predictedPercent));
    if (overview.predictionInterval) {
      line += ToolPanel::tr(", prediction interval %1 … %2")
                  .arg(percentText(overview.predictionInterval->low), percentText(overview.predictionInterval->high));
    }
    lines << line;
  }
  lines << (overview.slopePercentPerYear
                ? ToolPanel::tr("Its own checks: drift %1 a year (%2)")
                      .arg(percentText(*overview.slopePercentPerYear), fromText(writeState(overview.state)))
                : ToolPanel::tr("Its own checks: too few to tell a drift"));
  lines << fromText(overview.basisWords);
  lines << ToolPanel::tr("Last check %1, due %2").arg(dateText(overview.lastCheck), dateText(overview.dueDate));
  return lines.join(QLatin1Char('\n'));
}

}  // namespace

ToolPanel::ToolPanel(QWidget* parent)
    : QFrame(parent),
      standing_(new Badge(this)),
      title_(new QLabel(this)),
      facts_(new QLabel(this)),
      outlook_(new QLabel(this)),
      actions_(new QStackedWidget(this)) {
  makeTitle(*title_);
  for (QLabel* text : {facts_, outlook_}) {
    text->setWordWrap(true);
    text->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    text->setTextInteractionFlags(Qt::TextSelectableByMouse);
  }
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 4, 0, 0);
  grid->setHorizontalSpacing(24);
  grid->addWidget(title_, 0, 0);
  grid->addWidget(standing_, 0, 1);
  grid->addWidget(facts_, 1, 0);
  grid->addWidget(outlook_, 1, 1);
  actions_->addWidget(makeActions());
  reason_ = new ReasonLine(this);
  connect(reason_, &ReasonLine::given, this, &ToolPanel::changeWanted);
  connect(reason_, &ReasonLine::cancelled, this, &ToolPanel::stopAsking);
  actions_->addWidget(reason_);
  group_ = new GroupLine(this);
  connect(group_, &GroupLine::given, this, &ToolPanel::groupWanted);
  connect(group_, &GroupLine::unnamed, this, &ToolPanel::groupUnnamed);
  connect(group_, &GroupLine::cancelled, this, &ToolPanel::stopAsking);
  actions_->addWidget(group_);
  actions_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  grid->addWidget(actions_, 2, 0, 1, 2);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(1, 1);
  display(nullptr);
}

QWidget* ToolPanel::makeActions() {
  auto* panel = new QWidget(this);
  auto* row = new QHBoxLayout(panel);
  row->setContentsMargins(0, 0, 0, 0);
  const auto button = [&](const QString& label) {
    auto* made = new QPushButton(label, panel);
    row->addWidget(made);
    return made;
  };
  check_ = button(tr("Check at the &Bench"));
  history_ = button(tr("Open H&istory"));
  row->addStretch();
  alike_ = button(tr("A&like…"));
  hold_ = button(tr("H&old…"));
  release_ = button(tr("&Release…"));
  retire_ = button(tr("Re&tire…"));
  needs(*check_, Act::RecordCheck);
  needs(*alike_, Act::GroupTool);
  needs(*hold_, Act::HoldTool);
  needs(*release_, Act::ReleaseTool);
  needs(*retire_, Act::RetireTool);
  connect(check_, &QPushButton::clicked, this, [this] { emit checkWanted(tool_); });
  connect(history_, &QPushButton::clicked, this, [this] { emit historyWanted(tool_); });
  connect(alike_, &QPushButton::clicked, this, &ToolPanel::askGroup);
  connect(hold_, &QPushButton::clicked, this, [this] { ask(ToolChange::Hold); });
  connect(release_, &QPushButton::clicked, this, [this] { ask(ToolChange::Release); });
  connect(retire_, &QPushButton::clicked, this, [this] { ask(ToolChange::Retire); });
  return panel;
}

void ToolPanel::display(const ToolOverview* overview, bool known) {
  const QString id = overview ? fromText(overview->tool.id) : QString();
  if (id != tool_) stopAsking();
  tool_ = id;
  actions_->setEnabled(overview);
  if (!overview) {
    title_->setText(tr("No tool selected"));
    facts_->setText(tr("Select a tool in the table to see it here."));
    outlook_->clear();
    standing_->clearLook();
    return;
  }
  title_->setText(id + QStringLiteral("  ") + fromText(overview->tool.description));
  if (known) {
    standing_->setLook(lookOf(overview->standing));
  } else {
    standing_->clearLook();
  }
  facts_->setText(factsOf(overview->tool) + QLatin1Char('\n') + alikeText());
  outlook_->setText(known ? outlookOf(*overview) : tr("Working out where it stands …"));
  const ToolStatus status = overview->tool.status;
  check_->setEnabled(status != ToolStatus::Retired);
  hold_->setEnabled(status == ToolStatus::InService);
  release_->setEnabled(status == ToolStatus::Held);
  retire_->setEnabled(status != ToolStatus::Retired);
}

void ToolPanel::ask(ToolChange change) {
  actions_->setCurrentIndex(1);
  reason_->ask(change, tool_);
}

QString ToolPanel::alikeText() const {
  const auto own = groups_.find(toText(tool_));
  if (own == groups_.end()) return tr("alike by maker, kind and maximum");
  constexpr qsizetype named = 4;
  QStringList others;
  for (const auto& [tool, group] : groups_) {
    if (group == own->second && tool != own->first) others << fromText(tool);
  }
  QString with = others.mid(0, named).join(QStringLiteral(", "));
  if (others.size() > named) with += tr(" and %1 more").arg(others.size() - named);
  const QString name = fromText(own->second);
  return others.isEmpty() ? tr("alike: “%1”, no other tool yet").arg(name)
                          : tr("alike: “%1”, with %2").arg(name, with);
}

void ToolPanel::askGroup() {
  QStringList names;
  for (const auto& [tool, group] : groups_) names << fromText(group);
  names.sort(Qt::CaseInsensitive);
  names.removeDuplicates();
  const auto own = groups_.find(toText(tool_));
  actions_->setCurrentWidget(group_);
  group_->ask(tool_, own == groups_.end() ? QString() : fromText(own->second), names);
}

void ToolPanel::stopAsking() { actions_->setCurrentIndex(0); }

}  // namespace steadyturn
