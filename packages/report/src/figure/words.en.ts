import type { Words } from '@thrum/model/ground'

/** What figures say themselves, in English. ICU message texts by id. */
export const words: Words = {
  'report/figure/empty': 'There is nothing to draw: no count bears on this.',
  'report/figure/foot': 'Data {digest}, {selected} of {of} counts; {question}; Thrum {version}.',
  'report/figure/alt':
    '{title}. {each}{more, plural, =0 {} one {; one more row stands in the table} other {; # more rows stand in the table}}.',
  'report/figure/more': '{more, plural, one {One more stands} other {# more stand}} in the table.',
  'report/figure/verdict/design-blocks':
    'Verdict{together, select, yes { of the comparisons together} other {}}: the design blocks.',
  'report/figure/verdict/alike': 'Verdict{together, select, yes { of the comparisons together} other {}}: alike.',
  'report/figure/verdict/shown': 'Verdict{together, select, yes { of the comparisons together} other {}}: shown.',
  'report/figure/verdict/leaning': 'Verdict{together, select, yes { of the comparisons together} other {}}: leaning.',
  'report/figure/verdict/unsettled': 'Verdict{together, select, yes { of the comparisons together} other {}}: unsettled.',
  'report/figure/standing/fields':
    'n = {equal, select, yes {} other {{least} to }}{most, plural, one {1 field, the independent unit} other {# fields, the independent units}} of each estimate.',
  'report/figure/standing/watches':
    'n = {equal, select, yes {} other {{least} to }}{most, plural, one {1 watch} other {# watches}}: what is told holds for these watches only.',
  'report/figure/none': 'This answer has no figure.',
  'report/figure/no-limit': 'no limit',
  'report/figure/level': '{level, number, ::.#}\u00a0%',
  'report/figure/role/headline': 'asked',
  'report/figure/role/beside': 'beside',

  'report/figure/intervals/head': '{unit} ({level} interval)',
  'report/figure/intervals/head/mixed': '{unit} ({level} interval unless said)',
  'report/figure/intervals/range': '{low} to {high}',
  'report/figure/intervals/at-least': '{low} or more',
  'report/figure/intervals/at-most': '{high} or less',
  'report/figure/intervals/band': 'too small to act on',
  'report/figure/intervals/less': '← fewer',
  'report/figure/intervals/more': 'more →',
  'report/figure/intervals/told': '{label}: {value}{range, select, none {} other { ({range})}}',
  'report/figure/intervals/told/none': '{label}',
  'report/figure/intervals/caption': 'Mark: estimate; line: its interval.',
  'report/figure/intervals/caption/mark': 'Mark: estimate.',
  'report/figure/intervals/caption/beside': 'Full marks: what was asked; open marks: beside it, for comparison.',
  'report/figure/intervals/caption/arrow': 'Arrow: the line goes on.',
  'report/figure/intervals/caption/band': 'Shaded: ratios from {low} to {high}, too small to act on.',
  'report/figure/intervals/caption/log': 'On the axis twice as many and half as many lie equally far from 1.',

  'report/figure/rates/unit': '{unit}{scale, select, log {, log scale} root {, square-root scale} other {}}',
  'report/figure/rates/told':
    '{kind}{level, select, none {} other {, {level}}}: {fields, plural, one {one field} other {# fields}}, {low} to {high} {unit}',
  'report/figure/rates/mark': '{field}{level, select, none {} other {, {level}}}: {rate} {unit}; {count} counted',
  'report/figure/rates/caption':
    'One mark for each field{paired, select, yes { at each level; a line joins the marks of one field} other {}}.',
  'report/figure/rates/caption/own': 'Each panel has its own axis.',

  'report/figure/strips/axis/date': 'date{year, select, none {} other { ({year})}}',
  'report/figure/strips/axis/season-day': 'days since the first count of the season',
  'report/figure/strips/axis/stage': 'bloom stage (BBCH code)',
  'report/figure/strips/axis/hour': 'hour of day, by the sun',
  'report/figure/strips/axis/temperature': 'air temperature (°C)',
  'report/figure/strips/caption': 'Each stroke: a value at which something was counted.',
  'report/figure/strips/apart': 'Nowhere do two levels lie over the same stretch.',
  'report/figure/strips/told': '{level}: {values, plural, one {one value} other {# values}}, {low} to {high}',
  'report/figure/strips/told/none': '{level}: no value known',
  'report/figure/strips/none': 'no value known',

  'report/figure/column/what': 'What',
  'report/figure/column/value': 'Estimate ({unit})',
  'report/figure/column/low': 'Lower limit',
  'report/figure/column/high': 'Upper limit',
  'report/figure/column/level': 'Interval',
  'report/figure/column/n': 'n',
  'report/figure/column/role': 'Role',
  'report/figure/column/field': 'Field',
  'report/figure/column/kind': 'Kind',
  'report/figure/column/at-level': 'Level',
  'report/figure/column/count': 'Counted',
  'report/figure/column/effort': 'Effort',
  'report/figure/column/rate': 'Rate ({unit})',
  'report/figure/column/axis': 'Value ({axis})',
}
