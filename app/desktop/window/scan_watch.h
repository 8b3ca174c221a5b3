// A label scanner that types like a keyboard, heard anywhere in the program.
//
// It types the label's code within a moment and ends with Enter. From the first letter of "STURN:" on, keys are held
// back; once it is sure that no scanner is typing (another letter, or a pause) they go where they were meant for, so
// that a person's typing is at most a moment late. A code typed by hand is no scan.
#pragma once

#include <QElapsedTimer>
#include <QEvent>
#include <QKeyEvent>
#include <QObject>
#include <QPointer>
#include <QTimer>
#include <memory>
#include <vector>

namespace steadyturn {

class ScanWatch : public QObject {
  Q_OBJECT
 public:
  explicit ScanWatch(QObject* parent = nullptr);

 signals:
  // Emitted while the code's Enter is handled: what it opens has the focus before the next key is.
  void scanned(const QString& code);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Held {
    QPointer<QObject> receiver;
    QEvent::Type type;
    int key;
    Qt::KeyboardModifiers modifiers;
    QString text;
  };
  bool hold(QObject* receiver, const QKeyEvent& event);
  bool press(QObject* receiver, const QKeyEvent& event);
  void pauseOver();
  void release();  // what was held goes on its way

  std::vector<Held> held_;
  QString typed_;
  bool releasing_ = false;
  QTimer pause_;
  QElapsedTimer sinceKey_;
};

}  // namespace steadyturn
