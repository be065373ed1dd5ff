import type { Words } from '../language.ts';

/** Der Rechner der Werkstatt unter einer anderen Adresse. */
export const moved: Words = {
  'moved.ask':
    'Der Rechner der Werkstatt antwortet noch immer nicht. Hat er jetzt eine andere Adresse, geben Sie sie hier ein. Das Büro zeigt sie unter „Netz“.',
  'moved.type': 'Adresse eingeben',
  'moved.scan': 'Adresse scannen',
  'moved.pad': 'Adresse des Rechners der Werkstatt',
  'moved.camera': 'Halten Sie das Bild, das das Büro unter „Netz“ zeigt, vor die Kamera.',
  'moved.form': 'Das ist keine Adresse im Netz der Werkstatt. Das Büro zeigt sie unter „Netz“.',
  'moved.looking': 'Der Rechner der Werkstatt wird unter {address} gesucht …',
  'moved.nothing':
    'Unter {address} antwortet nichts, dem dieses Gerät vertraut. Prüfen Sie die Adresse. Was hier erfasst wurde, bleibt aufgehoben.',
  'moved.stranger': '{address} ist nicht der Rechner dieser Werkstatt. Es wurde nichts dorthin gesendet.',
  'moved.revoked':
    'Unter {address} wurde diesem Gerät der Zugang entzogen. Was hier erfasst wurde, bleibt aufgehoben, wurde aber nicht gesendet.',
  'moved.found':
    'Der Rechner der Werkstatt ist jetzt unter {address}. Was hier erfasst wurde, wird dorthin gesendet.',
  'moved.left': '{count} Meldungen sind noch hier aufgehoben.',
  'moved.left.one': 'Eine Meldung ist noch hier aufgehoben.',
  'moved.go': 'Jetzt dorthin gehen',
  'moved.leaving': 'Es geht zur neuen Adresse des Rechners der Werkstatt',
  'moved.arriving': 'Dieses Gerät kommt zur neuen Adresse des Rechners der Werkstatt',
  'api.moved-here': 'Das tut nur eine Seite, die von einer anderen Adresse des Rechners der Werkstatt kam.',
  'api.moved-over':
    'Dieses Gerät war zu lange unterwegs oder ist schon angekommen. Öffnen Sie die Station noch einmal unter ihrer alten Adresse, oder koppeln Sie das Gerät hier.',
};
