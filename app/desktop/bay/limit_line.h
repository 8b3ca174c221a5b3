// A plastic part's limit by trial, beneath its specification: what the trial gave, the limit that it proposes, and
// where that comes from. The maker's data come first, and it says so.
#pragma once

#include <QWidget>

#include "shop_limit.h"

class QComboBox;
class QLineEdit;
class QPushButton;

namespace steadyturn {

class MessageLine;

class LimitLine : public QWidget {
  Q_OBJECT
 public:
  explicit LimitLine(QWidget* parent = nullptr);
  struct Typed {
    QString trial{};
    TrialKind kind = TrialKind::Stripping;
    Unit unit = Unit::NewtonMetre;
    bool operator==(const Typed&) const = default;
  };
  Typed typed() const;
  void show(const Typed& typed);
  // For the specification as typed so far; hidden where a limit by trial has no place.
  void display(const std::optional<Fastener>& fastener);
  void takeFocus();

 signals:
  void takenOver(const LimitProposal& proposal);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void propose();
  Result<LimitProposal> proposal() const;

  std::optional<Fastener> fastener_;
  QComboBox *kind_, *unit_;
  QLineEdit* trial_;
  QPushButton* take_;
  MessageLine* words_;
};

}  // namespace steadyturn
