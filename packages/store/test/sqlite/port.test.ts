import { createProjectFile } from '../../src/sqlite/index.ts'
import { testPath } from '../folder.ts'
import { describePort } from '../port-contract.ts'

describePort('SQLite', () => createProjectFile(testPath()))
