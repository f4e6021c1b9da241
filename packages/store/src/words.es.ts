import type { Words } from '@thrum/model/ground'

/** What `store` says to a person, in Spanish. ICU message texts by id, the same as in English. */
export const words: Words = {
  // Opening and creating
  'store/no-such-file': 'No existe el archivo {file}.',
  'store/no-such-file/remedy': 'Comprobar el nombre y la carpeta. Un proyecto nuevo se crea así:\n    thrum new my-project.thrum',
  'store/not-a-project': '{file} no es un proyecto de Thrum: {found}.',
  'store/not-a-project/remedy':
    'No se cambió nada. Abrir un archivo que termine en .thrum; una tabla de conteos se importa así:\n    thrum import counts.csv --in my-project.thrum',
  'store/found/empty': 'el archivo está vacío',
  'store/found/folder': 'es una carpeta',
  'store/found/other-database': 'es una base de datos de otro programa',
  'store/found/other-file': 'es un archivo de otra clase',
  'store/exists': '{file} ya existe.',
  'store/exists/remedy': 'No se cambió nada. Elegir otro nombre, o mover antes el archivo a otro lugar.',
  'store/same-file': '{file} no se puede copiar sobre sí mismo.',
  'store/same-file/remedy': 'No se cambió nada. Elegir otro nombre para la copia.',
  'store/folder-missing': 'No existe la carpeta {folder}.',
  'store/folder-missing/remedy': 'Crear antes la carpeta, o elegir otra.',
  'store/folder-protected': 'La carpeta {folder} no admite archivos nuevos.',
  'store/folder-protected/remedy': 'Elegir una carpeta en la que se permita escribir, o pedir ese permiso a su propietario.',
  'store/unreadable': 'No hay permiso para leer {file}.',
  'store/unreadable/remedy': 'Pedir al propietario del archivo permiso para leerlo.',
  'store/newest-out-of-reach':
    '{file} no fue cerrado por el último programa que escribió en él. Sus hechos más nuevos están al lado, en el archivo que termina en -wal, y no se pueden incorporar desde un lugar en el que no se puede escribir.',
  'store/newest-out-of-reach/remedy':
    'Copiar el archivo junto con el que termina en -wal a una carpeta propia, y abrir esa copia.',
  'store/damaged': '{file} está dañado: {what}.',
  'store/damaged/remedy':
    'No se cambió nada. Conservar el archivo y abrir en su lugar una copia de seguridad. Los hechos que tenga otra copia o un teléfono vuelven al fusionar.',
  'store/older-layout':
    '{file} tiene la disposición antigua {found}; esta versión lee la disposición {known} y tendría que escribir en el archivo para actualizarlo.',
  'store/older-layout/remedy':
    'Abrirlo una vez para escritura (antes se hace una copia de seguridad al lado), o copiarlo a una carpeta en la que se permita escribir.',
  'store/layout-unreadable':
    '{file} tiene la disposición {found}; esta versión conoce la disposición {known} y no puede leer aquella.',
  'store/layout-unreadable/remedy': 'No se cambió nada. Abrirlo con la versión de Thrum que lo escribió, o con una más nueva.',

  // Why it takes no writing
  'store/read/asked': 'se abrió solo para lectura',
  'store/read/asked/remedy': 'Abrirlo para escritura.',
  'store/read/file-protected': 'el archivo está protegido contra escritura',
  'store/read/file-protected/remedy':
    'Permitir la escritura en el archivo, o trabajar con una copia; una copia se reincorpora al fusionar.',
  'store/read/folder-protected': 'su carpeta no admite escritura, y un proyecto en el que se escribe necesita un archivo al lado',
  'store/read/folder-protected/remedy':
    'Copiar el proyecto a una carpeta en la que se permita escribir; una copia se reincorpora al fusionar.',
  'store/read/newer-layout': 'lo escribió un Thrum más nuevo (disposición {found}; esta versión conoce la disposición {known})',
  'store/read/newer-layout/remedy': 'Instalar el Thrum más nuevo para escribir en él.',

  // Writing
  'store/read-only': 'No se escribió nada en {file}: {because}.',
  'store/read-only/remedy': 'Lo que contiene se puede seguir leyendo. {remedy}',
  'store/busy': 'Otro programa lleva {seconds, plural, one {# segundo} other {# segundos}} escribiendo en {file} sin pausa.',
  'store/busy/remedy': 'No se escribió nada y no se perdió nada. Esperar a que termine, o cerrarlo, y repetir el último paso.',
  'store/in-use': 'Otro programa tiene abierto {file}.',
  'store/in-use/remedy': 'No se cambió nada. Cerrar el otro programa y repetirlo.',
  'store/disk-full': 'No se pudo escribir más en {file}: el disco está lleno, o se agotó una cuota.',
  'store/disk-full/remedy': 'Todos los hechos anteriores están a salvo y se pueden leer. Hacer sitio y repetir el último paso.',
  'store/write-failed': 'El disco informó de un fallo mientras se usaba {file}: {what}.',
  'store/write-failed/remedy':
    'Puede que el último paso no se haya guardado; repetirlo. Si el disco o la memoria USB está fallando, hacer antes una copia del proyecto en otro lugar.',
  'store/fact-misshapen': 'El hecho {id} no se puede guardar: {where} {what}.',
  'store/fact-misshapen/remedy': 'No se escribió nada. Es un error del programa que creó el hecho; se agradece que se comunique.',
  'store/too-large': 'Algo era demasiado grande para guardarlo en {file}.',
  'store/too-large/remedy': 'No se escribió nada. Dividir el archivo e importar sus partes una tras otra.',

  // Copies
  'store/attachment-damaged': 'El archivo adjunto {hash} está dañado: sus bytes no son los que se guardaron.',
  'store/attachment-damaged/remedy': 'Importar de nuevo el archivo original; los hechos que salieron de él no se ven afectados.',
  'store/backup-unsound': 'La copia de {file} no superó su comprobación: {what}.',
  'store/backup-unsound/remedy':
    'La copia se eliminó y el proyecto quedó como estaba. Probar con otro disco, y hacer comprobar el proyecto.',
}
