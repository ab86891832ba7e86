#include "core/bench/table.h"
#include "core/planner/planner.h"

namespace tiepoint {

JumperBill jumperBill(const Bench& bench) {
    JumperBill bill;
    const Table table = arrange(bench);
    for (const Jumper& jumper : bench.jumpers) {
        ++bill.count;
        bill.lengthMm += wireToCutMm(bench, table, jumper);
    }
    return bill;
}

}  // namespace tiepoint
