#include "ui/paint/carried_group.h"

#include "ui/paint/board_layer.h"
#include "ui/paint/rest_patch.h"

#include <utility>

namespace tiepoint::ui {

GroupInput groupInput(const Picture& picture) {
    return {BenchSeen::of(picture, picture.marks.group), picture.marks.groupBoard, picture.marks.refused};
}

void addCarriedGroup(Patches& patches, const GroupInput& input) {
    if (!input.group.bench) return;
    const Picture group = input.group.picture();
    const auto add = [&](Patch patch) {
        patch.opacity = input.refused ? kRefusedOpacity : kCarriedOpacity;
        patches.push_back(std::move(patch));
    };
    for (int board = 0; board < static_cast<int>(group.bench().boards.size()); ++board) {
        if (group.bench().boards[static_cast<std::size_t>(board)].id != input.board) continue;
        Patches patchesOfBoard;
        addBoard(patchesOfBoard, boardSeen(group, board));
        for (Patch& patch : patchesOfBoard) add(std::move(patch));
    }
    for (int part = 0; part < static_cast<int>(group.bench().parts.size()); ++part) add(restPatch(group, part));
    for (int jumper = 0; jumper < static_cast<int>(group.bench().jumpers.size()); ++jumper)
        add(restPatchOfJumper(group, jumper));
}

}  // namespace tiepoint::ui
