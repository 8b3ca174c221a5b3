// Where a file goes to or comes from: typed or browsed for, in a line of the page.
#pragma once

#include <QStringList>
#include <QWidget>

class QLineEdit;
class QPushButton;

namespace steadyturn {

class PathLine : public QWidget {
  Q_OBJECT
 public:
  enum class Direction { Read, Write };
  // `action` is the button's label with its mnemonic; `filter` as file dialogs take it.
  PathLine(Direction direction, const QString& accessibleName, const QString& action, const QString& filter,
           QWidget* parent = nullptr);
  QString path() const;
  void setPath(const QString& path);
  // A file name in the folder that was used last. What a person typed or browsed for is left alone.
  void suggest(const QString& fileName);
  void setFilter(const QString& filter) { filter_ = filter; }
  void setActionEnabled(bool enabled);
  // Whether writing to path() would replace a file nobody has agreed to replace. Browsing for it is agreeing.
  bool wouldReplace() const;
  void agreeToReplace();
  void rememberFolder() const;

 signals:
  void confirmed(const QString& path);

 private:
  void browse();

  Direction direction_;
  QString filter_, suggested_, agreed_;
  QLineEdit* line_;
  QPushButton* action_;
};

}  // namespace steadyturn
