// A project as one SQLite file
export { type Backup, backupProject } from './backup-project.ts'
export { checkProjectFile, type FileCheck } from './check-project-file.ts'
export { createProjectFile } from './create-project-file.ts'
export { moveProjectFile } from './move-project-file.ts'
export { type OpenOptions, openProjectFile } from './open-project-file.ts'
