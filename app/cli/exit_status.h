// What the program says to the shell when it ends (sysexits.h numbers, fixed by the command-line contract).
#pragma once

namespace steadyturn::exit_status {

inline constexpr int done = 0;
inline constexpr int damageFound = 1;    // `verify` found damage
inline constexpr int badUsage = 64;      // unknown command or option, missing argument
inline constexpr int badInput = 65;      // data that can't be accepted
inline constexpr int inputMissing = 66;  // an input file is missing or unreadable
inline constexpr int unavailable = 69;   // the database can't be used
inline constexpr int cannotCreate = 73;  // an output can't be written
inline constexpr int notPermitted = 77;
inline constexpr int cancelled = 130;  // stopped by the person: 128 + SIGINT, as shells report it

}  // namespace steadyturn::exit_status
