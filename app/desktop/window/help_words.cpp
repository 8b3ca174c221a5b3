#include "help_words.h"

#include <QCoreApplication>

#include "places_rail.h"

namespace steadyturn {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Help", text); }

QString row(const QString& key, const QString& meaning) {
  return QStringLiteral("<tr><td style='padding:3px 24px 3px 0'><b>%1</b></td><td style='padding:3px 0'>%2</td></tr>")
      .arg(key, meaning);
}

}  // namespace

QString keysText() {
  QString text = QStringLiteral("<h2>%1</h2><table>").arg(tr("Keys"));
  for (const Place place : allPlaces) {
    text += row(placeShortcut(place).toString(QKeySequence::NativeText),
                placeName(place) + QStringLiteral(": ") + placePurpose(place));
  }
  text += row(tr("Alt and an underlined letter"), tr("that control"));
  text += row(tr("Enter, Tab"), tr("Bench: on to the next reading. Up and Down change the set-point."));
  text += row(tr("Ctrl+S"), tr("Bench: save the check"));
  text += row(tr("Enter on a tool"), tr("Cabinet: its History"));
  text += row(tr("Down in a search line"), tr("to the list that was found; Escape empties the line"));
  text += row(tr("Enter on a fastener, then on a wrench"), tr("Bay: to the wrenches, then to the job to record"));
  text += row(tr("Alt+Up, Alt+Down, Delete"), tr("Bay, in a service's list: move the line, take it off"));
  text += row(tr("Ctrl+N, Ctrl+O"), tr("start a new shop, open one"));
  text += row(tr("Ctrl+Shift+I, Ctrl+Shift+E"), tr("import from CSV, export to CSV"));
  text += row(tr("F1"), tr("these keys; Escape leads back"));
  return text + QStringLiteral("</table>");
}

QString aboutText() {
  return QStringLiteral("<h2>Steadyturn %1</h2><p>%2</p><p>%3</p><p>%4</p><p>%5</p>")
      .arg(
          QStringLiteral(STEADYTURN_VERSION), tr("Torque wrenches that can be believed, and joints that hold."),
          tr("Checks follow ISO 6789-1:2017 and ISO 6789-2:2017, probabilities of conformity JCGM 106:2012, verdicts "
             "ILAC-G8:09/2019, joints VDI 2230 Part 1. Every figure names its source where it stands."),
          tr("Free software under the GNU General Public License, version 3 or later (GPL-3.0-or-later). It comes "
             "without any "
             "warranty. You may pass it on and change it under that licence."),
          tr("A shop is one file on this machine. The program sends nothing anywhere."));
}

QString cautionsText() {
  QString text = QStringLiteral("<h2>%1</h2><ul>").arg(tr("Cautions"));
  const QStringList cautions{
      tr("The vehicle maker's service data come first. What stands in the fastener table was entered by somebody: "
         "look at its "
         "source and revision."),
      tr("A plastic part without a limit on record is not tightened by torque."),
      tr("A probability says what is likely, not what happened. Look at the seat; don't infer it from the click."),
      tr("Pull steadily at the marked grip and stop at the click. Never loosen with a torque wrench. Make a few "
         "pulls before the "
         "first one that counts."),
      tr("After an overload, a fall or a repair a wrench is checked before it is used again, whatever its due date "
         "says."),
      tr("A check on your own bench is not an accredited calibration, and its certificate does not claim to be "
         "one.")};
  for (const QString& caution : cautions)
    text += QStringLiteral("<li style='margin-bottom:8px'>%1</li>").arg(caution);
  return text + QStringLiteral("</ul>");
}

}  // namespace steadyturn
