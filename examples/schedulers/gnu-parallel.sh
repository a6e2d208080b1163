#!/bin/sh
# A survey in four parts, a process each, by GNU parallel; then joined. From the folder of the program:
#
#   sh examples/schedulers/gnu-parallel.sh examples/teacher/how-bad-can-the-closing-instant-be.yaml reports/whole
#
# On one computer `npm start -- survey` by itself is faster: it uses every core. This is for several computers that share the
# folder: give parallel their names (--sshlogin) and this folder (--workdir), and leave out --workers.
#
# Where a part has failed or was ended early: the same line again. Runs that are there are not made again.
set -eu
survey=$1
out=$2

parallel --halt soon,fail=1 npm start --silent -- survey "$survey" --shard {}/4 --out "$out".{} --workers 1 ::: 1 2 3 4
npm start --silent -- merge "$out.1" "$out.2" "$out.3" "$out.4" --out "$out"
