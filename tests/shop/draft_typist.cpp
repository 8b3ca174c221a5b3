// Types checks for ever, saving the draft at each reading and answering each save that returned with one byte. The
// test kills it.
#include <unistd.h>

#include <QCoreApplication>
#include <cstdio>

#include "typed_draft.h"

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  if (argc != 2) return 64;
  auto shop = steadyturn::Shop::open(argv[1]);
  if (!shop) return 69;
  for (int readings = 1;; ++readings) {
    if (!shop->saveDraft(steadyturn::typedDraft(readings))) return 1;
    const char saved = '.';
    if (write(STDOUT_FILENO, &saved, 1) != 1) return 0;
  }
}
