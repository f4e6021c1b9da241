import { amended, makeFact } from '@thrum/model'
import { describe, expect, it } from 'vitest'
import { auditRates, byGravity, isBlocked, kindSet, stagesApart } from '../../src/index.ts'
import { type Asked, ask, type Seen, severityOf } from '../asked.ts'
import { countBatch, type Project, projectOfCounts } from '../project-of-counts.ts'
import { said } from '../said.ts'
import { changed, dayOf, northOf, soundProject } from '../sound-project.ts'

const between: Asked = { between: 'strip' }
const see = (project: Project, asked: Asked = between): Seen => ask(projectOfCounts(project), asked)
const grade = (project: Project, code: string, asked: Asked = between) => severityOf(see(project, asked), code)
const sound = soundProject()
const isStrip = (row: { readonly [column: string]: unknown }): boolean => row.strip === 'yes'

describe('a sound design', () => {
  it('has no finding at all', () => {
    expect(see(sound).findings).toEqual([])
    expect(see(sound, { between: 'strip', against: 'fly' }).findings).toEqual([])
  })
})

describe('tangled', () => {
  it('note, warn and block, each with its words', () => {
    // Six fields a level at 63, 65, 67, 63, 65, 67, one level so many codes further on: partial R2 3 d2 / (3 d2 + 32).
    const further = (codes: number) =>
      see(changed(soundProject({ visits: 1 }), (row, k) => ({ stage: 63 + (k % 3) * 2 + (isStrip(row) ? codes : 0) })))
    const [little, note, warn, block] = [2, 3, 5, 12].map(further) as [Seen, Seen, Seen, Seen]
    expect(severityOf(little, 'tangled')).toBeUndefined()
    expect([note, warn, block].map((seen) => severityOf(seen, 'tangled'))).toEqual(['note', 'warn', 'block'])
    expect(said(warn.findings.find(({ code }) => code === 'tangled')?.text ?? { id: '', values: {} })).toMatch(
      /^bloom stage is partly tangled with no against yes \(bloom stage 65\.0 against 70\.0\): .* 3\.3 times less sure/u,
    )
  })

  it('a lost one says that no analysis can tell, with the days', () => {
    const [finding] = see(changed(sound, (row) => (isStrip(row) ? { date: dayOf(40) } : { date: dayOf(1) }))).findings
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toBe(
      'no and yes differ in date in the same way everywhere (date 2031-05-06 against 2031-06-14). What is seen may be the one or the other, and no analysis of these counts can tell which.',
    )
    expect(said(finding?.cure ?? { id: '', values: {} })).toBe('Visit fields of every level on the same days.')
  })

  it.each(['date', 'stage', 'hour', 'temperature', 'observer'])('%s can at most warn of a relative count', (name) => {
    const far = { date: dayOf(40), stage: 67, start: '10:30', temperature: 26, observer: 'observer 1' }
    const near = { date: dayOf(0), stage: 62, start: '14:30', temperature: 18, observer: 'observer 2' }
    const project = changed(sound, (row) => ({
      [name === 'hour' ? 'start' : name]: (isStrip(row) ? far : near)[name === 'hour' ? 'start' : (name as 'date')],
    }))
    expect(isBlocked(see(project).findings)).toBe(true)
    expect(isBlocked(see(project, { between: 'strip', against: 'fly' }).findings)).toBe(false)
    expect(grade(project, 'tangled', { between: 'strip', against: 'fly' })).toBe('warn')
  })
})

describe('before and after', () => {
  const since: Asked = { since: dayOf(5) }

  it('without control blocks, since the date is the change; of a relative count it warns', () => {
    expect(grade(sound, 'no-control', since)).toBe('block')
    expect(grade(sound, 'no-control', { ...since, against: 'fly' })).toBe('warn')
  })

  it('with control has no such finding, and days are no nuisance', () => {
    const seen = see(sound, { between: 'strip', since: dayOf(5) })
    expect(seen.design.structure).toBe('before-after-control')
    expect(seen.findings).toEqual([])
  })

  it('a treated side that moved on further in bloom is told as a change', () => {
    const project = changed(sound, (row, k) => ({
      stage: (row.date as string) < dayOf(5) ? 62 : isStrip(row) ? 66 + (k % 2) : 63 + (k % 2),
    }))
    const seen = see(project, { between: 'strip', since: dayOf(5) })
    const tangled = seen.findings.find(({ code }) => code === 'tangled')
    expect(said(tangled?.text ?? { id: '', values: {} })).toContain('further by 1.5 codes against further by 4.5 codes')
    expect(said(tangled?.cure ?? { id: '', values: {} })).toBe(
      'Visit changed and unchanged fields on the same days, before and after.',
    )
  })
})

describe('not replicated', () => {
  it.each([
    [2, 'block'],
    [3, 'warn'],
    [5, 'warn'],
    [6, undefined],
  ])('%d fields a level: %s', (arm, severity) => {
    expect(grade(soundProject({ arm }), 'not-replicated')).toBe(severity)
  })

  it.each([
    [1, 'block'],
    [2, 'block'],
    [3, 'warn'],
    [5, 'warn'],
    [6, undefined],
  ])('%d fields that hold both: %s', (fields, severity) => {
    const project = soundProject({ arm: fields })
    const within = {
      ...project,
      counts: project.counts.slice(0, 4 * fields).map((row, k) => ({ ...row, strip: k % 4 < 2 ? 'no' : 'yes' })),
    }
    expect(grade(within, 'not-replicated')).toBe(severity)
  })

  it('the fewest fields decide, and the cure says how many more of what', () => {
    const project = soundProject({ arm: 6 })
    const lopsided = {
      ...project,
      counts: project.counts.filter((row) => !isStrip(row) || row.field === 'field 6' || row.field === 'field 7'),
    }
    const finding = see(lopsided).findings.find(({ code }) => code === 'not-replicated')
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toContain('6 with no, 2 with yes')
    expect(said(finding?.cure ?? { id: '', values: {} })).toBe('More fields: one with yes.')
  })

  it('is not softened for a relative count', () => {
    expect(grade(soundProject({ arm: 2 }), 'not-replicated', { between: 'strip', against: 'fly' })).toBe('block')
  })
})

describe('same bees in fields of different levels', () => {
  /** Levels alternate along a line, so that neighbours differ. */
  const spaced = (metres: number): Project => {
    const project = soundProject()
    return {
      ...project,
      fields: (project.fields ?? []).map(({ field }, k) => ({
        field,
        ...northOf(k < 6 ? 20_000 * k : 20_000 * (k - 6) + metres),
      })),
      kinds: [
        { kind: 'bee', group: 'bumble bee' },
        { kind: 'fly', group: 'hover fly' },
        { kind: 'hive bee', group: 'honey bee' },
      ],
    }
  }
  it.each([
    ['fly', 249, 'block'],
    ['fly', 251, 'warn'],
    ['fly', 299, 'warn'],
    ['fly', 301, undefined],
    ['bee', 249, 'block'],
    ['bee', 999, 'warn'],
    ['bee', 1001, undefined],
    ['hive bee', 249, 'block'],
    ['hive bee', 2999, 'warn'],
    ['hive bee', 3001, undefined],
  ])('%s, %d m: %s', (kind, metres, severity) => {
    expect(grade(spaced(metres), 'same-bees-fields', { between: 'strip', kind })).toBe(severity)
  })

  it('of two kinds the further flier decides; a relative count is not spared', () => {
    expect(grade(spaced(999), 'same-bees-fields', { between: 'strip', kind: 'fly', against: 'bee' })).toBe('warn')
    expect(grade(spaced(200), 'same-bees-fields', { between: 'strip', kind: 'fly', against: 'bee' })).toBe('block')
  })

  it('fields of one level may lie side by side', () => {
    const project = soundProject()
    const fields = (project.fields ?? []).map(({ field }, k) => ({ field, ...northOf(k < 6 ? 10 * k : 50_000 + 10 * k) }))
    expect(grade({ ...project, fields }, 'same-bees-fields')).toBeUndefined()
  })

  it('distance is from edge to edge where outlines are known', () => {
    const square = (north: number) => {
      const { latitude, longitude } = northOf(north)
      const side = 0.001
      return [
        [longitude, latitude],
        [longitude + side, latitude],
        [longitude + side, latitude + side],
        [longitude, latitude + side],
      ] as [number, number][]
    }
    // 0.001 degrees are 111 m: outlines that begin 350 m apart leave 239 m between them.
    const outlined = (metres: number): Project => {
      const project = spaced(metres)
      return {
        ...project,
        fields: (project.fields ?? []).map(({ field }, k) => ({
          field,
          polygon: square(k < 6 ? 20_000 * k : 20_000 * (k - 6) + metres),
        })),
      }
    }
    expect(grade(outlined(350), 'same-bees-fields')).toBe('block')
    expect(grade(outlined(370), 'same-bees-fields')).toBe('warn')
  })

  it('unknown places warn', () => {
    const project = { ...sound, fields: (sound.fields ?? []).slice(1) }
    expect(grade(project, 'places-unknown')).toBe('warn')
    expect(grade({ ...sound, fields: [] }, 'same-bees-fields')).toBeUndefined()
  })

  it('is no question within fields', () => {
    expect(grade({ ...sound, fields: [] }, 'places-unknown', { between: 'daypart' })).toBeUndefined()
  })
})

describe('hives just moved', () => {
  it.each([
    [3, 'warn'],
    [4, undefined],
  ])('%d days before the first count: %s', (days, severity) => {
    const project = { ...sound, hives: [{ hives: 4, field: 'field 2', metres: 50, from: dayOf(-days) }] }
    expect(grade(project, 'hives-just-moved')).toBe(severity)
  })

  it('at another field, or after the counts, is nothing', () => {
    const placed = (field: string, from: string) => ({ ...sound, hives: [{ hives: 4, field, metres: 50, from }] })
    expect(grade(placed('far away', dayOf(8)), 'hives-just-moved')).toBeUndefined()
    expect(grade(placed('field 2', dayOf(10)), 'hives-just-moved')).toBeUndefined()
  })
})

describe('effort', () => {
  const without = (column: string, where: (k: number) => boolean) =>
    changed(sound, (_, k) => (where(k) ? { [column]: undefined } : {}))

  it('minutes unknown in some counts warn, in all block; a relative count needs none', () => {
    expect(
      grade(
        without('minutes', (k) => k === 5),
        'effort-unknown',
      ),
    ).toBe('warn')
    expect(
      grade(
        without('minutes', () => true),
        'effort-unknown',
      ),
    ).toBe('block')
    const design = see(
      without('minutes', (k) => k === 5),
      { between: 'strip', against: 'fly' },
    )
    expect(severityOf(design, 'effort-unknown')).toBeUndefined()
  })

  it('a level all of whose counts lack it blocks, and is named', () => {
    const seen = see(changed(sound, (row) => (isStrip(row) ? { minutes: undefined } : {})))
    const [finding] = seen.findings.filter(({ severity }) => severity === 'block' && true)
    expect(seen.findings.map(({ code }) => code)).toContain('effort-unknown')
    expect(seen.findings.some(({ text }) => said(text) === 'No count with yes has its watched minutes recorded.')).toBe(true)
    expect(finding).toBeDefined()
  })

  it.each([
    [15, undefined],
    [15.1, 'warn'],
  ])('watches of 10 and %d minutes: %s', (longest, severity) => {
    expect(
      grade(
        changed(sound, (_, k) => (k === 7 ? { minutes: longest } : {})),
        'durations-differ',
      ),
    ).toBe(severity)
  })

  it('snapshots have no minutes to lack', () => {
    const scans = changed(sound, () => ({ unit: 'snapshot', minutes: undefined }))
    expect(see(scans).findings).toEqual([])
  })

  it.each([
    ['flower', 'flowers', 'flowers-not-counted'],
    ['area', 'area', 'area-unknown'],
  ] as const)('per %s: some counts without warn, all block, and per time it is no matter', (measure, column, code) => {
    const asked: Asked = { between: 'strip', measure }
    expect(
      grade(
        without(column, (k) => k === 5),
        code,
        asked,
      ),
    ).toBe('warn')
    expect(
      grade(
        without(column, () => true),
        code,
        asked,
      ),
    ).toBe('block')
    expect(
      grade(
        without(column, () => true),
        code,
      ),
    ).toBeUndefined()
    expect(grade(sound, code, asked)).toBeUndefined()
    const lacking = changed(sound, (row) => (isStrip(row) ? { [column]: undefined } : {}))
    expect(isBlocked(see(lacking, asked).findings)).toBe(true)
  })

  it('counts with no open flower are noted per flower', () => {
    const seen = see(
      changed(sound, (_, k) => (k === 5 ? { flowers: 0 } : {})),
      { between: 'strip', measure: 'flower' },
    )
    expect(severityOf(seen, 'no-open-flowers')).toBe('note')
  })
})

describe('zeros missing', () => {
  const unsure = changed(sound, (_, k) => (k < 4 ? { zeros: 'not-known' } : {}))
  it('block a rate and a relative count alike (methods 2.9a: zeros stay as they are)', () => {
    expect(grade(unsure, 'zeros-missing')).toBe('block')
    expect(grade(unsure, 'zeros-missing', { between: 'strip', against: 'fly' })).toBe('block')
    expect(
      grade(
        changed(sound, () => ({ zeros: 'none-seen' })),
        'zeros-missing',
      ),
    ).toBeUndefined()
  })
})

describe('outside the window', () => {
  const rained = (where: (row: { readonly [column: string]: unknown }, k: number) => boolean) =>
    changed(sound, (row, k) => (where(row, k) ? { rain: 'rain' } : {}))

  it('some counts are left out with a warning; asked for all, they stay in', () => {
    const seen = see(rained((_, k) => k === 5))
    expect(severityOf(seen, 'outside-window')).toBe('warn')
    expect(seen.design.rows.length).toBe(sound.counts.length - 1)
    const all = see(
      rained((_, k) => k === 5),
      { between: 'strip', window: 'all' },
    )
    expect(severityOf(all, 'outside-window')).toBeUndefined()
    expect(all.design.rows.length).toBe(sound.counts.length)
  })

  it('all counts of one level block, and of a relative count too', () => {
    expect(grade(rained(isStrip), 'outside-window')).toBe('block')
    expect(grade(rained(isStrip), 'outside-window', { between: 'strip', against: 'fly' })).toBe('block')
  })

  it('a level that is empty for another reason is not told as outside', () => {
    const project = changed(sound, (row, k) => (isStrip(row) ? { minutes: undefined } : k === 5 ? { rain: 'rain' } : {}))
    const seen = see(project)
    expect(severityOf(seen, 'outside-window')).toBe('warn')
    const turned = changed(sound, (row, k) => (isStrip(row) ? { rain: 'rain' } : k === 5 ? { minutes: undefined } : {}))
    expect(see(turned).findings.map(({ text }) => text.id)).not.toContain('survey/audit/level-without-effort/time')
  })
})

describe('bloom', () => {
  const staged = (no: number, yes: number) =>
    changed(sound, (row, k) => ({ stage: (isStrip(row) ? yes : no) + (k % 2 === 0 ? 1 : -1) }))
  const apart = (project: Project, adjusted: readonly string[], asked = between) => {
    const seen = see(project, asked)
    const input = {
      ...seen,
      snapshot: projectOfCounts(project),
      selected: [],
      kinds: [],
      worth: 1.5,
      relative: asked.against !== undefined,
    }
    return stagesApart(input, adjusted)
  }

  it('levels four codes apart may be compared, further ones only with the stage in', () => {
    expect(apart(staged(62, 66), [])).toEqual([])
    const [finding] = apart(staged(62, 66.1), [])
    expect(finding?.severity).toBe('block')
    expect(said(finding?.text ?? { id: '', values: {} })).toContain('from 62.0 to 66.1')
    expect(apart(staged(62, 66.1), ['stage'])).toEqual([])
    expect(apart(staged(62, 66.1), [], { between: 'strip', against: 'fly' })[0]?.severity).toBe('warn')
  })

  it.each([
    [59, 'warn'],
    [60, 'warn'],
    [61, undefined],
    [67, undefined],
    [68, 'warn'],
    [70, 'warn'],
  ])('stage %d: %s', (stage, severity) => {
    expect(
      grade(
        changed(sound, () => ({ stage })),
        'outside-bloom',
      ),
    ).toBe(severity)
  })
})

describe('one observer per level', () => {
  /** Of ten visits to each level, so many by the other level's observer. */
  const exchanged = (visits: number) => {
    const project = soundProject({ arm: 6, visits: 5 })
    return changed(project, (row, k) => {
      const place = k % 30
      const own = isStrip(row) ? 'observer 2' : 'observer 1'
      const other = isStrip(row) ? 'observer 1' : 'observer 2'
      return { observer: place < visits ? other : own }
    })
  }
  it.each([
    [0, 'block'],
    [5, 'block'],
    [6, 'warn'],
    [9, 'warn'],
    [10, undefined],
    [15, undefined],
  ])('%d of 30 visits exchanged: %s', (visits, severity) => {
    expect(grade(exchanged(visits), 'one-observer-per-level')).toBe(severity)
  })

  it('at most warns of a relative count, and is no question between observers', () => {
    expect(grade(exchanged(0), 'one-observer-per-level', { between: 'strip', against: 'fly' })).toBe('warn')
    expect(grade(exchanged(0), 'one-observer-per-level', { between: 'observer' })).toBeUndefined()
  })
})

describe('records', () => {
  it('busy watches warn above 30 of a kind in ten minutes, contacts do not', () => {
    const busy = (bee: number, unit = 'individuals') =>
      changed(sound, (row, k) => ({ unit, ...(k === 5 ? { tallies: { ...row.tallies, bee } } : {}) }))
    expect(grade(busy(30), 'saturated-counts')).toBeUndefined()
    expect(grade(busy(31), 'saturated-counts')).toBe('warn')
    expect(grade(busy(31, 'visits'), 'saturated-counts')).toBeUndefined()
  })

  it('cells that wait, and kinds not looked for, are noted', () => {
    const waiting = changed(sound, (row, k) =>
      k === 5 ? { tallies: { ...row.tallies, bee: { number: 7, mark: 'waiting' as const } } } : {},
    )
    expect(grade(waiting, 'waiting')).toBe('note')
    expect(grade(waiting, 'not-looked-for')).toBe('note')
    const absent = changed(sound, (_, k) => (k === 5 ? { tallies: { fly: 2 } } : {}))
    expect(grade(absent, 'waiting')).toBeUndefined()
    expect(grade(absent, 'not-looked-for')).toBe('note')
  })

  it('nuisances nobody recorded are noted, and that a season is more than a year', () => {
    expect(
      grade(
        changed(sound, (_, k) => (k === 0 ? { stage: undefined } : {})),
        'not-checked',
      ),
    ).toBeUndefined()
    expect(
      grade(
        changed(sound, (row) => (row.field === 'field 0' ? { stage: undefined } : {})),
        'not-checked',
      ),
    ).toBe('note')
    const seasons = changed(sound, (_, k) => ({ season: String(2031 + (k % 2)) }))
    expect(grade(seasons, 'everything-differed', { between: 'season' })).toBe('note')
    expect(grade(sound, 'everything-differed', { between: 'month' })).toBe('note')
  })

  it('corrections that contradict each other, and records of a newer version, warn', () => {
    const project: Project = {
      ...sound,
      more: (author) => {
        const fix = (to: number) =>
          makeFact(
            amended,
            { of: `${countBatch}#3`, column: 'minutes', after: null, from: 10, to, reason: 'read off the sheet' },
            author,
          )
        const newer = makeFact(amended, { of: 'x', column: 'y', after: null, from: 1, to: 2, reason: 'later' }, author)
        return [fix(11), fix(12), { ...newer, v: 99 }]
      },
    }
    expect(grade(project, 'two-corrections')).toBe('warn')
    expect(grade(project, 'records-unread')).toBe('warn')
  })
})

describe('the audit of plain rates', () => {
  it('finds what is wrong with counts, not with levels', () => {
    const snapshot = projectOfCounts(
      changed(sound, (row, k) => ({
        minutes: k === 0 ? undefined : k === 1 ? 30 : 10,
        flowers: k === 2 ? undefined : 200,
        zeros: k === 3 ? 'not-known' : 'typed',
        tallies: k === 4 ? { fly: 1 } : k === 5 ? { ...row.tallies, bee: 40 } : (row.tallies ?? {}),
      })),
    )
    const selected = Array.from({ length: snapshot.tables.count.rows }, (_, k) => k)
    const findings = auditRates({ snapshot, selected, kinds: [kindSet(snapshot, 'bee')], measure: 'flower', isSnapshot: false })
    expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      'block zeros-missing',
      'warn effort-unknown',
      'warn durations-differ',
      'warn flowers-not-counted',
      'warn saturated-counts',
      'note not-looked-for',
    ])
    for (const { text, cure } of findings) expect([said(text), cure === null ? '' : said(cure)]).toBeDefined()
  })
})

describe('order', () => {
  it('the gravest first, and among equals as found', () => {
    const findings = [
      { severity: 'note', k: 1 },
      { severity: 'block', k: 2 },
      { severity: 'warn', k: 3 },
      { severity: 'block', k: 4 },
    ] as const
    expect(byGravity(findings).map(({ k }) => k)).toEqual([2, 4, 3, 1])
  })
})
