import { chromium } from '@playwright/test'
import { readFileSync } from 'node:fs'
const j=f=>JSON.parse(readFileSync('/tmp/look/'+f,'utf8'))
const project={title:'Ostrel Vale',file:'ostrel-vale.thrum',digest:'abcdef0123456789',mode:'write',because:null,counts:160,fields:['Aldenbeck','Brenholt','Cindermoor','Dorvenna Orchard'].map(name=>({name,crop:'sweet cherry'})),kinds:[{name:'bumble bee',count:3200},{name:'honey bee',count:2900},{name:'hover fly',count:300},{name:'small solitary bee',count:280}],seasons:['2031','2032'],crops:['sweet cherry','sunflower'],factors:[{name:'strip',levels:['no strip','strip'],measured:false},{name:'position',levels:['centre','edge'],measured:false},{name:'daypart',levels:['morning','afternoon'],measured:false}],waiting:0,contested:0,demonstration:true,version:'0.1.0'}
const walk=['shown','alike','unsettled','design-blocks'].map(verdict=>({question:'what-differs',options:{kinds:['bumble bee'],between:'strip',worth:2},verdict}))
const asked=[{question:'what-differs',asked:'a',options:{kinds:['bumble bee'],between:'strip',levels:['no strip','strip'],worth:2},looks:2,lastAt:'2026-11-25T10:00:00.000Z',lastVerdict:'shown',pinned:true,stale:false},{question:'who-visits',asked:'b',options:{},looks:1,lastAt:'2026-11-24T10:00:00.000Z',lastVerdict:null,pinned:false,stale:true}]
const counts=(offset,total=100000)=>({total,offset,rows:Array.from({length:200},(_,k)=>`x#${offset+k}`),lines:Array.from({length:200},(_,k)=>`sheets.csv:${offset+k+2}`),columns:[{name:'field',title:'field',type:'text',unit:null,values:Array.from({length:200},(_,k)=>'Aldenbeck '+(offset+k)),marks:null},{name:'date',title:'date',type:'text',unit:null,values:Array(200).fill('2032-05-04'),marks:null},{name:'minutes',title:'minutes',type:'number',unit:'min',values:Array(200).fill(10),marks:null},{name:'observer',title:'observer',type:'text',unit:null,values:Array(200).fill('walker 1'),marks:null},{name:'bumble bee',title:'bumble bee',type:'number',unit:null,values:Array.from({length:200},(_,k)=>k%7),marks:null}]})
const b=await chromium.launch({executablePath:'/usr/bin/chromium',args:['--no-sandbox']})
const which=process.argv.slice(2)
for (const [w,h] of [[1440,1000],[390,844]]) for (const look of ['light','dark']) {
  const c=await b.newContext({viewport:{width:w,height:h},colorScheme:look})
  const p=await c.newPage()
  p.on('console',m=>m.type()==='error'&&console.log('CONSOLE',m.text())); p.on('pageerror',e=>console.log('PAGEERR',e.message))
  await p.route('**/api/**',async r=>{const u=new URL(r.request().url());const path=u.pathname.slice(5)
    const ok=x=>r.fulfill({json:x})
    if(path==='project')return ok(project); if(path==='asked')return ok(asked); if(path==='walk')return ok(walk)
    if(path==='ask'){const body=r.request().postDataJSON();return ok(body.question==='who-visits'?j('a2.json'):body.options.since?j('a3.json'):j('a1.json'))}
    if(path==='counts')return ok(counts(Number(u.searchParams.get('offset'))))
    if(path==='history')return ok({told:'Aldenbeck, plot 1, 2032-05-04',cells:[]})
    if(path==='stream')return new Promise(()=>{})
    return r.fulfill({status:404,json:{code:'x',text:'no',remedy:''}})})
  const base='http://127.0.0.1:4799'
  const q=(q,o)=>`${base}/?q=${q}&o=${encodeURIComponent(JSON.stringify(o))}`
  const shots={walk:`${base}/`,shown:q('what-differs',{kinds:['bumble bee'],between:'strip',levels:['no strip','strip'],worth:2}),visits:q('who-visits',{}),blocked:q('what-differs',{kinds:['honey bee'],since:'2032-07-19',worth:2}),wanting:q('what-differs',{kinds:['bumble bee'],between:'strip'}),counts:`${base}/counts`,tables:`${base}/tables`}
  for(const [n,u] of Object.entries(shots)){ if(which.length&&!which.includes(n))continue; await p.goto(u); await p.waitForTimeout(700); await p.screenshot({path:`/tmp/look/${n}-${w}-${look}.png`,fullPage:n!=='counts'}) }
  await c.close()
}
await b.close()
