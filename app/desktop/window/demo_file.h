// Where this person's copy of the demo depot lies.
#pragma once

#include <QString>

namespace steadyturn {

// In the folder for the program's data, which is made when it is missing.
QString demoFile();

}  // namespace steadyturn
