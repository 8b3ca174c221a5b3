#include "help_page.h"

#include <QKeyEvent>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace steadyturn {

HelpPage::HelpPage(QWidget* parent)
    : QWidget(parent), text_(new QTextBrowser(this)), back_(new QPushButton(tr("&Back"), this)) {
  text_->setAccessibleName(tr("Help"));
  text_->setFrameShape(QFrame::NoFrame);
  text_->document()->setDocumentMargin(20);
  auto* column = new QVBoxLayout(this);
  column->addWidget(text_, 1);
  column->addWidget(back_, 0, Qt::AlignLeft);
  connect(back_, &QPushButton::clicked, this, &HelpPage::left);
}

void HelpPage::display(const QString& html) {
  text_->setHtml(html);
  back_->setFocus(Qt::OtherFocusReason);
}

void HelpPage::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return void(emit left());
  QWidget::keyPressEvent(event);
}

}  // namespace steadyturn
