#!/bin/sh
# A survey in four parts, a task of a Slurm job array each. From the folder of the program, which all nodes must see:
#
#   survey=examples/teacher/how-bad-can-the-closing-instant-be.yaml
#   parts=$(sbatch --parsable examples/schedulers/slurm-array.sh $survey reports/whole)
#   sbatch --dependency=afterok:$parts --kill-on-invalid-dep=yes examples/schedulers/slurm-merge.sh reports/whole
#
# Where a task has failed or was ended early (exit code 5): submit both again. Runs that are there are not made again.
#SBATCH --job-name=survey
#SBATCH --array=1-4
#SBATCH --cpus-per-task=1
#SBATCH --mem-per-cpu=1G
# Thirty seconds before the time is over the program is told, and ends in order.
#SBATCH --time=01:00:00
#SBATCH --signal=TERM@30
set -eu
survey=$1
out=$2

# srun, because the signal goes to its processes and not to this shell.
srun --cpus-per-task="$SLURM_CPUS_PER_TASK" node src/cli/start.js survey "$survey" \
  --shard "$SLURM_ARRAY_TASK_ID/$SLURM_ARRAY_TASK_COUNT" --out "$out.$SLURM_ARRAY_TASK_ID" \
  --workers "$SLURM_CPUS_PER_TASK"
