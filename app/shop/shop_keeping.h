// Backups that keep themselves, and the way back from one. (A single copy: backupShop in shop_proof.h.)
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "shop.h"
#include "verification.h"

namespace steadyturn {

struct KeptBackup {
  std::string file;
  Checkpoint head;
  bool made = true;                  // false: a backup of this very head was there already
  std::vector<std::string> removed;  // older ones, past what is kept
};
inline constexpr std::size_t usualBackupsKept = 14;

// Copies the shop into a folder, which is made where it is missing, under a name with the day and the ledger's head:
// "depot.2026-03-14.584-9f86d081884c7d65.backup". Of this shop's older backups there the newest `keep` (at least 1)
// stay, and the last of each month for a year. Problems: as backupShop.
Result<KeptBackup> backupInto(const Shop& shop, const std::string& folder, std::size_t keep = usualBackupsKept);
// The same where there is none of today yet.
Result<std::optional<KeptBackup>> backupDaily(const Shop& shop, const std::string& folder,
                                              std::size_t keep = usualBackupsKept);

// What a shop at this address is called among backups: "depot" of "/srv/depot.db" and of "postgresql://server/depot".
std::string shopNameIn(const std::string& address);

// Which of these names of backups go, the rest stays; other names are left alone.
std::vector<std::string> outdatedBackups(std::vector<std::string> names, const std::string& shopName,
                                         std::size_t keep);

struct Moved {
  Checkpoint head;
  std::string from, to;  // as they may be shown: without a password
};
// Carries a shop from a file to a server's database or back: everything of `from` as it is at one moment, proven in
// its new place, with the same ledger. `from` stays as it is. `to`: a file that does not exist yet, or a database
// with no shop in it or one that nothing was entered in. Problems: as opening `from`; CannotCreate, Conflict (`from`
// is damaged), Cancelled; then nothing is left at `to`.
Result<Moved> moveShop(const std::string& from, const std::string& to, const Progress& progress = {});

struct Restored {
  Checkpoint head;
  std::string old;  // where the shop that was there is kept; empty where there was none
};
// Puts a backup in a shop's place, or where none is. The copy is opened, brought to this program's version and proven
// before it gets its name, and its head must be the one that its name tells. A shop that is there is only replaced
// when asked and while nobody has it open; it stays beside the new one; one on a server is never replaced. Whether
// somebody may replace it, the caller asks that shop (Act::RestoreShop) before. Problems: FileMissing, Conflict (a
// backup that is damaged), CannotCreate, Unavailable (in use).
Result<Restored> restoreShop(const std::string& backup, const std::string& address, bool replace);

}  // namespace steadyturn
