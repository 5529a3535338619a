import type { ReactNode } from 'react';
import type { Result } from '../core/result.js';
import type { Invitation, InvitationFailure } from '../session/invitation.js';
import type { PreparingStep, VisitStep } from '../session/wearer-visit.js';
import { cardAskedFor, VISIT_STEPS } from '../session/wearer-visit.js';
import { dayText } from './day-text.js';
import { FailureNote } from './failure-note.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';
import type { Saying } from './saying.js';
import { SentenceList } from './sentence-list.js';
import type { ReadAloud } from './use-read-aloud.js';
import { useReadAloud } from './use-read-aloud.js';
import { useWearerVisit } from './use-wearer-visit.js';
import { WearerCamera } from './wearer-camera.js';
import { WearerDrawing } from './wearer-drawing.js';
import type { WearerEquipment } from './wearer-equipment.js';
import { WearerFile } from './wearer-file.js';
import { WearerFrame } from './wearer-frame.js';
import { WearerResult } from './wearer-result.js';
import type { StepProps } from './wearer-step-props.js';
import { refusedSaying } from './wearer-sentences.js';

/** Weighed: the two workers with the face model, as they come compressed, in MB (10^6 bytes). */
const LOADED_MEGABYTES = 10;

/** All that a distant wearer sees. */
export function WearerScreen(props: {
  readonly equipment: WearerEquipment;
  readonly invited: Result<Invitation, InvitationFailure>;
}) {
  const { equipment, invited } = props;
  const readAloud = useReadAloud(equipment.prompts);
  if (!invited.ok) return <Refused failure={invited.failure} readAloud={readAloud} />;
  if (equipment.support !== 'supported')
    return <Stopped saying={words.wearer.refused[equipment.support]} readAloud={readAloud} action={null} />;
  return <Visit equipment={equipment} invitation={invited.value} readAloud={readAloud} />;
}

function Visit(props: {
  readonly equipment: WearerEquipment;
  readonly invitation: Invitation;
  readonly readAloud: ReadAloud;
}) {
  const inHand = useWearerVisit(props.equipment);
  const { step } = inHand.visit;
  const given = { ...props, ...inHand, place: placeOf(step) };
  switch (step) {
    case 'welcome':
      return <Welcome {...given} />;
    case 'camera':
      return <WearerCamera {...given} />;
    case 'result':
      return <WearerResult {...given} />;
    case 'file':
      return <WearerFile {...given} />;
    case 'card':
    case 'face':
    case 'light':
    case 'distance':
    case 'hold':
    case 'gaze':
      return <Preparing key={step} step={step} {...given} />;
  }
}

/** The first step is the one after the welcome. */
function placeOf(step: VisitStep): { readonly number: number; readonly all: number } {
  return { number: VISIT_STEPS.indexOf(step), all: VISIT_STEPS.length - 1 };
}

/** Who invites, what for, and what becomes of it. */
function Welcome({ dispatch, invitation, readAloud }: StepProps) {
  const said = words.wearer.welcome;
  const { practice, expiresOn, asksForPictures } = invitation;
  const heading = said.heading(practice);
  const points = [...said.points(practice), ...(asksForPictures ? [said.pictures] : [])];
  return (
    <WearerFrame
      heading={heading}
      place={null}
      readAloud={readAloud}
      spoken={[heading, said.what, ...points].join(' ')}
      onBack={null}
      actions={
        <button
          type="button"
          className="main-action"
          onClick={() => {
            dispatch({ kind: 'went-on', isSo: true });
          }}
        >
          {said.begin}
        </button>
      }
    >
      <p>{said.what}</p>
      <SentenceList sentences={points} />
      <p className="wearer-small">
        {said.expires(dayText(expiresOn))} {said.loads(formatNumber(LOADED_MEGABYTES, 0))}
      </p>
    </WearerFrame>
  );
}

/** One thing that is made ready before the camera opens. */
function Preparing({ step, dispatch, invitation, readAloud, place }: StepProps & { readonly step: PreparingStep }) {
  const isPrinted = step === 'card' && cardAskedFor(invitation) === 'printed';
  const said = words.wearer.steps[isPrinted ? 'printedCard' : step];
  const { heading, points, caution, done, cannot } = said;
  const permission = step === 'gaze' ? words.wearer.steps.gaze.permission : '';
  return (
    <WearerFrame
      heading={heading}
      place={place}
      readAloud={readAloud}
      spoken={[heading, ...points, caution, permission].join(' ')}
      onBack={() => {
        dispatch({ kind: 'went-back' });
      }}
      actions={
        <>
          <button
            type="button"
            className="main-action"
            onClick={() => {
              dispatch({ kind: 'went-on', isSo: true });
            }}
          >
            {done}
          </button>
          {cannot !== '' && (
            <button
              type="button"
              onClick={() => {
                dispatch({ kind: 'went-on', isSo: false });
              }}
            >
              {cannot}
            </button>
          )}
        </>
      }
    >
      <WearerDrawing step={step} />
      <SentenceList sentences={points} />
      {caution !== '' && <p className="caution">{caution}</p>}
      {permission !== '' && <p className="wearer-small">{permission}</p>}
    </WearerFrame>
  );
}

/** The link is no invitation, or none any more. */
function Refused({ failure, readAloud }: { readonly failure: InvitationFailure; readonly readAloud: ReadAloud }) {
  return (
    <Stopped
      saying={refusedSaying(failure)}
      readAloud={readAloud}
      action={
        failure.kind === 'newer-version' && (
          <button
            type="button"
            className="main-action"
            onClick={() => {
              location.reload();
            }}
          >
            {words.wearer.refused.loadAgain}
          </button>
        )
      }
    />
  );
}

/** Here the visit cannot begin at all. */
function Stopped(props: { readonly saying: Saying; readonly readAloud: ReadAloud; readonly action: ReactNode }) {
  const { saying } = props;
  return (
    <WearerFrame
      heading={words.wearer.refused.heading}
      place={null}
      readAloud={props.readAloud}
      spoken={`${saying.what} ${saying.next}`}
      onBack={null}
      actions={props.action}
    >
      <FailureNote saying={saying} />
    </WearerFrame>
  );
}
