// Whole tables in and out as CSV, in a line of the window: kind, file, progress, cancel.
#pragma once

#include <QFrame>

#include "open_shop.h"
#include "path_line.h"
#include "worker.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QTimer;

namespace steadyturn {

class MessageLine;

class TransferPanel : public QFrame {
  Q_OBJECT
 public:
  explicit TransferPanel(OpenShop& shop, QWidget* parent = nullptr);
  void begin(PathLine::Direction direction, TableKind kind);
  bool working() const { return ticket_ != nullptr; }

 signals:
  void closed();

 private:
  void suggest();
  void start();
  void startImport(TableKind kind, const QString& path);
  void startExport(TableKind kind, const QString& path);
  void setWorking(bool working);
  void finishImport(TableKind kind, const QString& path, Result<ImportReport> report);
  void tellChanged(TableKind kind);
  void close();
  TableKind kind() const;

  OpenShop& shop_;
  QLabel* title_;
  QComboBox* kind_;
  PathLine *source_, *goal_;
  QCheckBox *comma_, *again_;
  MessageLine* message_;
  QProgressBar* progress_;
  QPushButton *cancel_, *close_;
  QTimer* patience_;  // the bar shows after a second
  bool importing_ = true;
  Ticket ticket_;
  Worker worker_;
};

}  // namespace steadyturn
