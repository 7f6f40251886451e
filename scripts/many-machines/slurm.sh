#!/bin/sh
# Four shares as a job array: sbatch slurm.sh, then, when all have ended, npm run build.
#SBATCH --job-name=mirrorleaf-plates
#SBATCH --array=1-4
#SBATCH --cpus-per-task=2
#SBATCH --mem=4G
#SBATCH --requeue
set -eu
export MIRRORLEAF_CONTENT="${MIRRORLEAF_CONTENT:?the shared content folder}"
export MIRRORLEAF_CACHE="${MIRRORLEAF_CACHE:?the shared results folder}"
cd "${MIRRORLEAF_HOME:?a checkout in which npm ci has run}"
npm run plates -- --share "${SLURM_ARRAY_TASK_ID}/${SLURM_ARRAY_TASK_COUNT}" --jobs "${SLURM_CPUS_PER_TASK}"
