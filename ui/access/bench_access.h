#pragma once
// The bench for those who hear it: a tree for screen readers under the view, of our own, since pixels have none.
//
//   Bench                    its title, and whether current flows
//     board A                its kind; under it its holes
//       hole A.e12           what is plugged in, and its volts; the keyboard's cursor is the focus
//     part D1                what it is, where its leads are, its reading as value; it can be selected, pressed and switched
//     jumper W1              from where to where, and its amperes
//     net 3                  everything that it joins, and its volts
//
// The window calls installBenchAccess() before it makes the view, so that nobody asks for the view's node earlier. Belongs to the window's thread.

#include "ui/view/bench_view.h"

namespace tiepoint::ui {

void installBenchAccess();

/// Tells screen readers what changed on a view: the cursor's hole as focus, selection, and readings. The window's tools connect it.
void announceBench(BenchView& view, LiveBench& live);

}  // namespace tiepoint::ui
