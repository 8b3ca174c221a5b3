// How large a panel's and a page's title stand.
#pragma once

class QWidget;

namespace steadyturn {

inline constexpr double panelTitle = 1.3, pageTitle = 1.5;  // times the text around it

void makeTitle(QWidget& widget, double size = panelTitle);

}  // namespace steadyturn
