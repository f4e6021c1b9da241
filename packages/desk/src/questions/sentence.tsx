import type { ProjectTold } from '@thrum/server/api'
import type { ReactNode } from 'react'
import type { Options } from '../door/shapes.ts'
import { useSay } from '../say/say.ts'
import { type AskingSearch, type QuestionName, questions, withOption } from './asking.ts'
import { type Choice, Day, NumberAbove, OneOf, SomeOf } from './choices.tsx'
import { Conditions } from './conditions.tsx'

export interface Filling {
  readonly project: ProjectTold
  readonly asking: AskingSearch
  readonly onChange: (asking: AskingSearch) => void
}

const texts = (value: Options[string]): readonly string[] =>
  Array.isArray(value) ? (value as readonly string[]) : typeof value === 'string' ? [value] : []
const text = (value: Options[string]): string | undefined => (typeof value === 'string' ? value : undefined)
const plain = (values: readonly string[]): readonly Choice[] => values.map((value) => ({ value, label: value }))

/** A text with blanks, as the language orders them: `Does {kinds} differ between {levels}?` */
function Filled({ id, blanks }: { readonly id: string; readonly blanks: { readonly [name: string]: ReactNode } }) {
  const say = useSay()
  const marked = say(id, Object.fromEntries(Object.keys(blanks).map((name) => [name, `\u2983${name}\u2984`])))
  return marked.split(/\u2983(\w+)\u2984/u).map((part, k) => (
    // Every second part is the name of a blank.
    // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a sentence have no other name than their place
    <span key={k}>{k % 2 === 1 ? blanks[part] : part}</span>
  ))
}

function useBlanks({ project, asking, onChange }: Filling) {
  const say = useSay()
  const { o = {} } = asking
  const set = (changes: Options): void => onChange(withOption(asking, changes))
  const numbers = new Intl.NumberFormat(say.language)
  const kinds = project.kinds.map(({ name, count }): Choice => ({ value: name, label: name, note: numbers.format(count) }))
  const factor = project.factors.find(({ name }) => name === o.between)
  return {
    kinds: (
      <SomeOf
        label={say('blank/kinds')}
        choices={kinds}
        chosen={texts(o.kinds)}
        all={say(asking.q === 'who-visits' ? 'blank/kinds/each' : 'blank/kinds/all')}
        onChoose={(chosen) => set({ kinds: chosen })}
      />
    ),
    fields: (
      <SomeOf
        label={say('blank/fields')}
        choices={project.fields.map(({ name, crop }) => ({ value: name, label: name, ...(crop === null ? {} : { note: crop }) }))}
        chosen={texts(o.field)}
        all={say('blank/fields/all')}
        onChoose={(field) => set({ field })}
      />
    ),
    seasons: (
      <SomeOf
        label={say('blank/seasons')}
        choices={plain(project.seasons)}
        chosen={texts(o.season)}
        all={say('blank/seasons/all')}
        onChoose={(season) => set({ season })}
      />
    ),
    crops: (
      <SomeOf
        label={say('blank/crops')}
        choices={plain(project.crops)}
        chosen={texts(o.crop)}
        all={say('blank/crops/all')}
        onChoose={(crop) => set({ crop })}
      />
    ),
    by: (
      <OneOf
        label={say('blank/by')}
        choices={['field', ...project.factors.map(({ name }) => name).filter((name) => name !== 'field')].map((by) => ({
          value: by,
          label: say('blank/by/each', { by }),
        }))}
        chosen={text(o.by)}
        none={say('blank/by/none')}
        onChoose={(by) => set({ by })}
      />
    ),
    between: (
      <OneOf
        label={say('blank/between')}
        choices={plain([...project.factors.map(({ name }) => name), ...(asking.q === 'what-differs' ? ['kind'] : [])])}
        chosen={text(o.between)}
        none={say(o.since === undefined ? 'blank/between/none' : 'blank/between/nothing')}
        onChoose={(between) => set({ between, levels: undefined, step: undefined })}
        isWanting={o.between === undefined && o.since === undefined}
      />
    ),
    levels: (
      <SomeOf
        label={say('blank/levels')}
        choices={o.between === 'kind' ? kinds : plain(factor?.levels ?? [])}
        chosen={texts(o.levels)}
        all={say('blank/levels/all')}
        onChoose={(levels) => set({ levels })}
      />
    ),
    since: (
      <Day
        label={say('blank/since')}
        chosen={text(o.since)}
        none={say('blank/since/none')}
        onChoose={(since) => set({ since })}
      />
    ),
    against: (
      <OneOf
        label={say('blank/against')}
        choices={kinds.map((own) => ({ ...own, label: say('blank/against/each', { kind: own.value }) }))}
        chosen={text(o.against)}
        none={say('blank/against/none')}
        onChoose={(against) => set({ against })}
      />
    ),
    per: (
      <OneOf
        label={say('blank/per')}
        choices={(['time', 'flower', 'area'] as const).map((value) => ({ value, label: say(`blank/per/${value}`) }))}
        chosen={text(o.per) ?? 'time'}
        onChoose={(per) => set({ per: per === 'time' ? undefined : per })}
      />
    ),
    window: (
      <OneOf
        label={say('blank/window')}
        choices={(['in', 'all'] as const).map((value) => ({ value, label: say(`blank/window/${value}`) }))}
        chosen={text(o.window) ?? 'in'}
        onChoose={(window) => set({ window: window === 'in' ? undefined : window })}
      />
    ),
    where: (
      <Conditions
        label={say('blank/where')}
        chosen={texts(o.where)}
        none={say('blank/where/none')}
        some="blank/where/some"
        onChoose={(where) => set({ where })}
      />
    ),
    except: (
      <Conditions
        label={say('blank/except')}
        chosen={texts(o.except)}
        none={say('blank/except/none')}
        some="blank/except/some"
        onChoose={(except) => set({ except })}
      />
    ),
    worth: (
      <NumberAbove
        label={say('blank/worth')}
        above={1}
        chosen={typeof o.worth === 'number' ? o.worth : undefined}
        suggested={[
          { value: 2, note: say('blank/worth/one-kind') },
          { value: 1.5, note: say('blank/worth/all-kinds') },
        ]}
        told={typeof o.worth === 'number' ? say('blank/worth/told', { worth: o.worth }) : say('blank/worth/none')}
        onChoose={(worth) => set({ worth })}
      />
    ),
    expect: (
      <OneOf
        label={say('blank/expect')}
        choices={(['more', 'fewer'] as const).map((value) => ({ value, label: say(`blank/expect/${value}`) }))}
        chosen={text(o.expect)}
        none={say('blank/expect/none')}
        onChoose={(expect) => set({ expect })}
      />
    ),
  }
}

/** The question as a sentence with blanks; they offer what the project holds. */
export function Sentence(filling: Filling) {
  const say = useSay()
  const blanks = useBlanks(filling)
  const { asking, onChange } = filling
  const question = (
    <OneOf
      label={say('blank/question')}
      choices={questions.map((value) => ({ value, label: say(`blank/question/${value}`) }))}
      chosen={asking.q}
      isWanting={asking.q === undefined}
      wanting={say('blank/question/none')}
      onChoose={(q) => onChange(q === undefined ? {} : withOption({ q: q as QuestionName }, {}))}
    />
  )
  const { q } = asking
  const isOfKinds = asking.o?.between === 'kind'
  const isOfDay = asking.o?.between === undefined && asking.o?.since !== undefined
  const form = isOfKinds ? 'kinds' : isOfDay && q !== 'who-visits' ? `${q}/since` : q
  return (
    <div className="sentence">
      <div className="asks">
        {q === undefined ? (
          <Filled id="sentence/none" blanks={{ question }} />
        ) : (
          <Filled id={`sentence/${form}`} blanks={{ question, ...blanks }} />
        )}
      </div>
      {q === undefined ? null : (
        <div className="more">
          <Filled id={`sentence/more/${form}`} blanks={blanks} />
        </div>
      )}
    </div>
  )
}
