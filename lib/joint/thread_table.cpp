#include "thread_table.h"

#include <algorithm>

namespace steadyturn {

namespace {

// Sources column by column in thread_table.h. Heads and holes of M18, M22 and from M27 on, nominal stress areas of
// M27 and up, and the list of fine pitches are from memory.
constexpr auto sizes = std::to_array<ThreadSize>({
    {3, 0.5, 5.03, 4.57, 3.4, {0.35}},
    {4, 0.7, 8.78, 5.88, 4.5, {0.5}},
    {5, 0.8, 14.2, 6.88, 5.5, {0.5}},
    {6, 1, 20.1, 8.88, 6.6, {0.75}},
    {8, 1.25, 36.6, 11.63, 9, {1, 0.75}},
    {10, 1.5, 58.0, 14.63, 11, {1.25, 1, 0.75}},
    {12, 1.75, 84.3, 16.63, 13.5, {1.5, 1.25, 1}},
    {14, 2, 115, 19.64, 15.5, {1.5, 1.25, 1}},
    {16, 2, 157, 22.49, 17.5, {1.5, 1}},
    {18, 2.5, 192, 25.34, 20, {2, 1.5, 1}},
    {20, 2.5, 245, 28.19, 22, {2, 1.5, 1}},
    {22, 2.5, 303, 31.71, 24, {2, 1.5, 1}},
    {24, 3, 353, 33.61, 26, {2, 1.5, 1}},
    {27, 3, 459, 38, 30, {2, 1.5, 1}},
    {30, 3.5, 561, 42.75, 33, {3, 2, 1.5, 1}},
    {33, 3.5, 694, 46.55, 36, {3, 2, 1.5}},
    {36, 4, 817, 51.11, 39, {3, 2, 1.5}},
    {39, 4, 976, 55.86, 42, {3, 2, 1.5}},
});

}  // namespace

std::span<const ThreadSize> threadSizes() { return sizes; }

const ThreadSize* findThreadSize(double diameterMm) {
  const auto found = std::ranges::find(sizes, diameterMm, &ThreadSize::diameterMm);
  return found == sizes.end() ? nullptr : &*found;
}

}  // namespace steadyturn
