#include "cabinet_place.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTableView>

#include "act_guard.h"
#include "add_tool_panel.h"
#include "deviation_delegate.h"
#include "message_line.h"
#include "papers_panel.h"
#include "search_field.h"
#include "table_look.h"
#include "text.h"

namespace steadyturn {

CabinetPlace::CabinetPlace(OpenShop& shop, QWidget* parent)
    : QWidget(parent),
      model_(shop),
      filter_(model_),
      message_(new MessageLine(this)),
      table_(new QTableView(this)),
      below_(new QStackedWidget(this)),
      panel_(new ToolPanel(this)),
      form_(new AddToolPanel(this)),
      papers_(new PapersPanel(shop, this)) {
  auto* column = new QVBoxLayout(this);
  column->addLayout(makeHead());
  column->addWidget(message_);
  makeTable();
  column->addWidget(table_, 1);
  below_->addWidget(panel_);
  below_->addWidget(form_);
  below_->addWidget(papers_);
  below_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  column->addWidget(below_);

  connect(panel_, &ToolPanel::checkWanted, this, &CabinetPlace::checkWanted);
  connect(panel_, &ToolPanel::historyWanted, this, &CabinetPlace::historyWanted);
  connect(panel_, &ToolPanel::changeWanted, this, &CabinetPlace::change);
  connect(panel_, &ToolPanel::groupWanted, this, &CabinetPlace::group);
  connect(panel_, &ToolPanel::groupUnnamed, this, [this] {
    message_->say(Tone::Bad, tr("Type the name that all tools like it share, or choose “As maker, kind and maximum "
                                "say”."));
  });
  connect(form_, &AddToolPanel::wanted, this, &CabinetPlace::add);
  connect(form_, &AddToolPanel::cancelled, this, &CabinetPlace::closeForm);
  connect(papers_, &PapersPanel::left, this, &CabinetPlace::closeForm);
  connect(&model_, &CabinetModel::workingChanged, this, &CabinetPlace::showCounts);
  connect(&model_, &CabinetModel::refused, message_, &MessageLine::sayProblems);
  connect(&model_, &CabinetModel::refreshed, this, [this] {
    showCounts();
    if (!wanted_.empty()) select(std::exchange(wanted_, {}));
    if (!table_->currentIndex().isValid() && filter_.rowCount() > 0) table_->setCurrentIndex(filter_.index(0, 0));
    showSelected();
  });
  showCounts();
}

QLayout* CabinetPlace::makeHead() {
  auto* row = new QHBoxLayout;
  search_ = new SearchField(tr("Find a tool by any word"), this);
  search_->setList(table_);
  auto* find = new QLabel(tr("&Find"), this);
  find->setBuddy(search_);
  standing_ = new QComboBox(this);
  standing_->setAccessibleName(tr("Show tools of this standing"));
  standing_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  auto* standing = new QLabel(tr("Standin&g"), this);
  standing->setBuddy(standing_);
  count_ = new QLabel(this);
  auto* addButton = new QPushButton(tr("&Add a tool…"), this);
  auto* papersButton = new QPushButton(tr("Papers, &due list…"), this);
  auto* importButton = new QPushButton(tr("I&mport…"), this);
  auto* exportButton = new QPushButton(tr("&Export…"), this);
  importButton->setAccessibleName(tr("Import tools from a CSV file"));
  exportButton->setAccessibleName(tr("Export the tools to a CSV file"));
  needs(*addButton, Act::AddTool);
  needs(*importButton, Act::Import);
  row->addWidget(find);
  row->addWidget(search_, 1);
  row->addWidget(standing);
  row->addWidget(standing_);
  row->addWidget(count_);
  row->addStretch();
  row->addWidget(addButton);
  row->addWidget(papersButton);
  row->addWidget(importButton);
  row->addWidget(exportButton);
  connect(search_, &QLineEdit::textChanged, this, [this](const QString& typed) {
    filter_.setWords(typed);
    if (!table_->currentIndex().isValid() && filter_.rowCount() > 0) table_->setCurrentIndex(filter_.index(0, 0));
    showCounts();
  });
  connect(search_, &QLineEdit::returnPressed, this, [this] {
    if (!selectedTool().isEmpty()) emit historyWanted(selectedTool());
  });
  connect(standing_, &QComboBox::currentIndexChanged, this, [this] {
    const QVariant chosen = standing_->currentData();
    filter_.setStanding(chosen.isValid() ? std::optional(static_cast<Standing>(chosen.toInt())) : std::nullopt);
    showCounts();
  });
  connect(addButton, &QPushButton::clicked, this, [this] {
    below_->setCurrentWidget(form_);
    form_->begin();
  });
  connect(papersButton, &QPushButton::clicked, this, [this] {
    below_->setCurrentWidget(papers_);
    papers_->begin(selectedTool());
  });
  // While the form is open its letters with Alt are its own.
  connect(below_, &QStackedWidget::currentChanged, addButton, [this, addButton, papersButton] {
    const bool formOpen = below_->currentWidget() == form_;
    addButton->setEnabled(!formOpen);
    papersButton->setEnabled(!formOpen);
  });
  connect(importButton, &QPushButton::clicked, this, [this] { emit importWanted(TableKind::Tools); });
  connect(exportButton, &QPushButton::clicked, this, [this] { emit exportWanted(TableKind::Tools); });
  return row;
}

void CabinetPlace::makeTable() {
  table_->setModel(&filter_);
  dressTable(*table_, tr("Tools"));
  table_->setItemDelegateForColumn(CabinetModel::DeviationColumn, new DeviationDelegate(table_));
  setColumns(*table_, {16, 9, 0, 17, 11, 30, 15, 11, 12});
  table_->setSortingEnabled(true);
  table_->sortByColumn(CabinetModel::StandingColumn, Qt::AscendingOrder);
  connect(table_, &QTableView::activated, this, [this] { emit historyWanted(selectedTool()); });
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, &CabinetPlace::showSelected);
}

void CabinetPlace::arrive() { search_->setFocus(Qt::TabFocusReason); }

QString CabinetPlace::selectedTool() const {
  const QModelIndex current = table_->currentIndex();
  return current.isValid() ? current.siblingAtColumn(CabinetModel::ToolColumn).data().toString() : QString();
}

void CabinetPlace::showSelected() {
  const int row = filter_.mapToSource(table_->currentIndex()).row();
  panel_->setGroups(model_.groups());
  panel_->display(model_.at(row), model_.known());
}

void CabinetPlace::showCounts() {
  count_->setText(tr("%1 of %2 tools").arg(filter_.rowCount()).arg(model_.rowCount()) +
                  (model_.working() ? tr(", working out where each stands …") : QString()));
  const QSignalBlocker quiet(standing_);
  const std::optional<Standing> chosen = filter_.standing();
  const auto counts = model_.counts();
  if (chosen && !counts.contains(*chosen)) filter_.setStanding({});  // the last such tool has moved on
  standing_->clear();
  standing_->addItem(tr("all"));
  for (const auto& [standing, count] : counts) {
    standing_->addItem(QStringLiteral("%1 (%2)").arg(lookOf(standing).word).arg(count), static_cast<int>(standing));
    if (standing == chosen) standing_->setCurrentIndex(standing_->count() - 1);
  }
}

void CabinetPlace::select(const std::string& tool) {
  const int row = model_.rowOf(tool);
  if (row >= 0) table_->setCurrentIndex(filter_.mapFromSource(model_.index(row, 0)));
}

void CabinetPlace::change(ToolChange change, const QString& tool, const QString& reason) {
  const std::string id = toText(tool);
  const std::string why = toText(reason);
  const Result<void> done = change == ToolChange::Hold      ? model_.hold(id, why)
                            : change == ToolChange::Release ? model_.release(id, why)
                                                            : model_.retire(id, why);
  if (!done) return message_->sayProblems(done.error());
  panel_->display(nullptr);  // closes the line; the refreshed row follows
  wanted_ = id;
  const QString word = change == ToolChange::Hold      ? tr("%1 is on hold: the Bay no longer offers it.")
                       : change == ToolChange::Release ? tr("%1 is back in service.")
                                                       : tr("%1 is retired. Its records stay.");
  message_->say(Tone::Good, word.arg(tool));
  table_->setFocus(Qt::OtherFocusReason);
}

void CabinetPlace::group(const QString& tool, const QString& name) {
  const Result<void> done = model_.group(toText(tool), toText(name));
  if (!done) return message_->sayProblems(done.error());  // the line stays, for another name
  panel_->stopAsking();
  showSelected();
  message_->say(Tone::Good,
                name.isEmpty()
                    ? tr("%1 is like the tools of its maker, kind and maximum again.").arg(tool)
                    : tr("%1 is in the group “%2”: its tools lend each other their drift.").arg(tool, name));
  table_->setFocus(Qt::OtherFocusReason);
}

void CabinetPlace::add(const ToolForm& form) {
  const Result<Tool> tool = form.tool();
  if (!tool) return message_->sayProblems(tool.error());
  const Result<void> added = model_.add(*tool);
  if (!added) return message_->sayProblems(added.error());
  wanted_ = tool->id;
  closeForm();
  message_->say(Tone::Good,
                tr("%1 is in the cabinet. The Bay offers it once it has passed a check.").arg(form.id.trimmed()));
}

void CabinetPlace::closeForm() {
  below_->setCurrentWidget(panel_);
  table_->setFocus(Qt::OtherFocusReason);
}

}  // namespace steadyturn
