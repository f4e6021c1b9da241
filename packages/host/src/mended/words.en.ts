import type { Words } from '@thrum/model/ground'

/** What is said of a file that mends another. */
export const mendedWords: Words = {
  'host/mended/no-such-file': 'No file {file} was brought into this project, so nothing can mend it.',
  'host/mended/no-such-file/remedy': 'Nothing was written. Check the name, or leave --mends out.',
  'host/mended/withdrawn': '{file} was brought before with this mapping, and withdrawn.',
  'host/mended/withdrawn/remedy':
    'Nothing was written. To have its rows back:\n    thrum withdraw {withdrawal} --reason TEXT\nTo bring it read otherwise, change the mapping first.',
  'host/mended/earlier-withdrawn':
    '{file} was brought before. The earlier version that it mends, {earlier}, was withdrawn, and with it the rows that both have.',
  'host/mended/earlier-withdrawn/remedy':
    'Nothing was written. To have those rows back:\n    thrum withdraw {withdrawal} --reason TEXT',
}
