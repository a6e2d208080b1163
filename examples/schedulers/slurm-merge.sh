#!/bin/sh
# Joins what the tasks of slurm-array.sh have made.
#SBATCH --job-name=merge
#SBATCH --time=00:10:00
set -eu
out=$1

node src/cli/start.js merge "$out.1" "$out.2" "$out.3" "$out.4" --out "$out"
