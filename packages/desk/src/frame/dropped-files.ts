import { useNavigate } from '@tanstack/react-router'
import { useEffect } from 'react'
import { nextStep, setTableInHand, tableInHand } from '../tables/table-in-hand.ts'

/**
 * A file may be dropped anywhere on the window: it goes to where tables are brought. Without this the browser would leave the
 * desk and show the file. A table that is being looked at is not pushed aside.
 */
export function useDroppedFiles(): void {
  const navigate = useNavigate()
  useEffect(() => {
    const over = (event: DragEvent): void => event.preventDefault()
    const drop = (event: DragEvent): void => {
      if (event.defaultPrevented) return
      event.preventDefault()
      const [file] = event.dataTransfer?.files ?? []
      if (file === undefined) return
      if (tableInHand().is !== 'offered') {
        nextStep()
        setTableInHand({ is: 'dropped', file })
      }
      void navigate({ to: '/tables' })
    }
    addEventListener('dragover', over)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('dragover', over)
      removeEventListener('drop', drop)
    }
  }, [navigate])
}
