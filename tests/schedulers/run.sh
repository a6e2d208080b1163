#!/bin/sh
# Runs the recipes of examples/schedulers with the real schedulers and compares what comes out with a survey made in one piece.
#
#   sh tests/schedulers/run.sh [--install] [parallel] [slurm]
#
# Without names: both. --install fetches what is missing from Debian's packages (as root); nothing is installed otherwise. Slurm runs as a
# cluster of this one computer, with daemons, ports, keys and folders of its own, which are gone afterwards.
set -eu
cd "$(dirname "$0")/../.."

SURVEY=examples/teacher/how-bad-can-the-closing-instant-be.yaml
RECIPES=examples/schedulers
# Ports of the daemons, away from Slurm's own 6817 and 6818.
CONTROLLER_PORT=26817
NODE_PORT=26818
# s, for the node to come up and for all tasks to end.
START_WAIT=30
JOB_WAIT=300

install=no
wanted=
for word; do
  case $word in
    --install) install=yes ;;
    parallel | slurm) wanted="$wanted $word" ;;
    *) echo "$word: expected --install, parallel or slurm" >&2; exit 1 ;;
  esac
done
wanted=${wanted:-parallel slurm}

# package(s) of a recipe, and the programs that show that they are there
need() {
  packages=$1
  shift
  for program; do
    command -v "$program" >/dev/null && continue
    if [ $install = no ]; then
      echo "$program is missing; Debian: apt-get install $packages, or this script with --install" >&2
      exit 1
    fi
    # shellcheck disable=SC2086 # several words
    DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $packages
    return
  done
}

scratch=$(mktemp -d)
daemons=
clean() {
  for id in $daemons; do kill "$id" 2>/dev/null || true; done
  for id in $daemons; do wait "$id" 2>/dev/null || true; done
  rm -rf "$scratch"
}
trap clean EXIT
trap 'exit 1' INT TERM

same() {
  for table in survey.csv survey.parquet; do
    cmp "$scratch/whole/$table" "$1/$table"
  done
  echo "$2: $(wc -l <"$1/survey.csv") lines, the same bytes as in one piece"
}

by_parallel() {
  sh "$RECIPES/gnu-parallel.sh" "$SURVEY" "$scratch/parallel" >"$scratch/parallel.log" 2>&1 || {
    cat "$scratch/parallel.log" >&2
    return 1
  }
  same "$scratch/parallel" 'GNU parallel'
}

start_slurm() {
  name=$(hostname -s)
  user=$(id -un)
  megabytes=$(awk '/^MemTotal/ { print int($2 / 1024) }' /proc/meminfo)
  mkdir -m 700 "$scratch/state" "$scratch/spool" "$scratch/keys"
  dd if=/dev/urandom of="$scratch/keys/munge.key" bs=128 count=1 2>/dev/null
  chmod 400 "$scratch/keys/munge.key"
  cat >"$scratch/slurm.conf" <<CONF
ClusterName=recipes
SlurmctldHost=$name(127.0.0.1)
SlurmUser=$user
SlurmdUser=$user
SlurmctldPort=$CONTROLLER_PORT
SlurmdPort=$NODE_PORT
AuthType=auth/munge
CredType=cred/munge
AuthInfo=socket=$scratch/munge.socket
StateSaveLocation=$scratch/state
SlurmdSpoolDir=$scratch/spool
SlurmctldPidFile=$scratch/slurmctld.pid
SlurmdPidFile=$scratch/slurmd.pid
ProctrackType=proctrack/pgid
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
SwitchType=switch/none
MpiDefault=none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
ReturnToService=2
NodeName=$name NodeAddr=127.0.0.1 CPUs=$(nproc) RealMemory=$megabytes State=UNKNOWN
PartitionName=all Nodes=$name Default=YES MaxTime=INFINITE State=UP
CONF
  # Without control groups, which a container need not have.
  echo 'CgroupAutomount=no' >"$scratch/cgroup.conf"
  export SLURM_CONF="$scratch/slurm.conf"
  munged --foreground --force --key-file="$scratch/keys/munge.key" --socket="$scratch/munge.socket" \
    --pid-file="$scratch/munged.pid" --log-file="$scratch/munged.log" --seed-file="$scratch/keys/munge.seed" \
    >"$scratch/munged.out" 2>&1 &
  daemons="$daemons $!"
  slurmctld -D >"$scratch/slurmctld.log" 2>&1 &
  daemons="$! $daemons"
  slurmd -D -N "$name" >"$scratch/slurmd.log" 2>&1 &
  daemons="$! $daemons"
  waited=0
  until [ "$(sinfo --noheader --format=%t 2>/dev/null)" = idle ]; do
    if [ $waited -ge $START_WAIT ]; then
      echo "the node did not come up in $START_WAIT s:" >&2
      tail -n 20 "$scratch/munged.out" "$scratch/munged.log" "$scratch/slurmctld.log" "$scratch/slurmd.log" >&2
      return 1
    fi
    sleep 1
    waited=$((waited + 1))
  done
}

by_slurm() {
  start_slurm
  parts=$(sbatch --parsable --output="$scratch/part-%a.log" "$RECIPES/slurm-array.sh" "$SURVEY" "$scratch/slurm")
  timeout $JOB_WAIT sbatch --wait --dependency="afterok:$parts" --kill-on-invalid-dep=yes \
    --output="$scratch/merge.log" "$RECIPES/slurm-merge.sh" "$scratch/slurm" >"$scratch/submitted.log" || {
    cat "$scratch"/submitted.log "$scratch"/part-*.log "$scratch/merge.log" >&2
    tail -n 20 "$scratch/slurmctld.log" "$scratch/slurmd.log" >&2
    return 1
  }
  same "$scratch/slurm" "Slurm $(sinfo --version | cut -d' ' -f2)"
}

for one in $wanted; do
  case $one in
    parallel) need parallel parallel ;;
    slurm) need 'slurm-wlm munge' munged slurmctld slurmd sbatch srun sinfo ;;
  esac
done

node src/cli/start.js survey "$SURVEY" --out "$scratch/whole" >"$scratch/whole.log" 2>&1
for one in $wanted; do "by_$one"; done
