// Set-points down, readings across; each row ends in its mean, its dots against the limit, and its verdict.
#pragma once

#include <QWidget>
#include <vector>

class QGridLayout;
class QLabel;
class QLineEdit;

namespace steadyturn {

class Badge;
class BenchModel;
class DotsStrip;
class ReadingCell;

class ReadingsGrid : public QWidget {
  Q_OBJECT
 public:
  explicit ReadingsGrid(BenchModel& model, QWidget* parent = nullptr);
  void focusFirstEmpty();
  void focusCell(int point, int reading);  // reading −1: the set-point
  // A reading from a device: into the focused cell, else into the first empty one, and on. False: all are full.
  bool put(const QString& reading);
  QWidget* lastCell() const;

 signals:
  void finished();  // Enter in the last cell

 protected:
  void changeEvent(QEvent* event) override;

 private:
  struct Row {
    QLineEdit* target;
    std::vector<ReadingCell*> cells;
    QLabel* mean;
    DotsStrip* strip;
    Badge* verdict;
    QLabel* question;  // beneath the first cell that is questioned
  };
  void rebuild();
  void makeHeader(QGridLayout* grid, std::size_t readings);
  Row makeRow(QGridLayout* grid, std::size_t point, std::size_t readings);
  void orderTabs();
  void showFigures();
  void showQuestions(std::size_t point);
  ReadingCell* waitingCell() const;
  void goOn(std::size_t point, std::size_t reading);

  BenchModel& model_;
  QWidget* sheet_ = nullptr;
  std::vector<Row> rows_;
};

}  // namespace steadyturn
