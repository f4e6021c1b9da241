import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { Desk } from './desk.tsx'
import { takeKey } from './door/key.ts'
import { startLook } from './frame/look.ts'
import './look/page.css'
import './look/sentence.css'
import './look/answer.css'
import './look/counts.css'
import './look/tables.css'
import './look/print.css'

takeKey()
startLook()
const place = document.getElementById('desk')
if (place !== null) {
  createRoot(place).render(
    <StrictMode>
      <Desk />
    </StrictMode>,
  )
}
