#!/usr/bin/env bash
# Instructions of three fixed runs, counted by callgrind, against the budgets beside this script: more than 5 % over fails.
# Built as for tests: that build is there already, and what is guarded is growth.
# usage: tests/bench/counts.sh [--store]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
budgets=tests/bench/budgets.txt
bench=$(cargo bench --locked --profile dev --bench engine --no-run 2>&1 | sed -n 's/.*(\(.*engine-[0-9a-f]*\)).*/\1/p')
[ -x "$bench" ] || { echo "the bench was not built" >&2; exit 1; }
new=$(mktemp)
for name in block literal large; do
    count=$(valgrind --tool=callgrind --callgrind-out-file=/dev/null "$bench" --once "$name" 2>&1 |
        sed -n 's/.*Collected : \([0-9]*\).*/\1/p')
    echo "$name $count" >>"$new"
done
if [ "${1:-}" = --store ]; then
    cp "$new" "$budgets"
fi
over=0
while read -r name budget; do
    count=$(awk -v n="$name" '$1 == n { print $2 }' "$new")
    printf '%-8s %12s instructions, budget %12s (%+.1f %%)\n' "$name" "$count" "$budget" \
        "$(awk -v a="$count" -v b="$budget" 'BEGIN { print (a / b - 1) * 100 }')"
    awk -v a="$count" -v b="$budget" 'BEGIN { exit !(a > b * 1.05) }' && over=1
done <"$budgets"
rm -f "$new"
[ "$over" -eq 0 ] || { echo "more than 5 % over budget" >&2; exit 1; }
