import type { ReactNode } from 'react';
import { useEffect, useRef } from 'react';

/** The content of a dialog that takes one file: one that was dropped on the page before, is dropped here, or is chosen. */
export function FileDrop(props: {
  /** was dropped before the dialog came; null where none was */
  readonly dropped: File | null;
  /** stands above the place for files */
  readonly intro?: ReactNode;
  /** what is to be dropped, or what was */
  readonly said: string;
  /** on the button for choosing a file */
  readonly chooseWords: string;
  /** which files are shown for choosing, as the attribute of inputs has it */
  readonly accept: string;
  /** a file is being looked at: no other one is taken */
  readonly isBusy: boolean;
  readonly onFile: (file: File) => void;
  readonly children: ReactNode;
}) {
  const { isBusy, onFile } = props;
  const take = (file: File | undefined): void => {
    if (file !== undefined && !isBusy) onFile(file);
  };

  const dropped = useRef(props.dropped);
  const takeDropped = useRef(onFile);
  useEffect(() => {
    const file = dropped.current;
    dropped.current = null;
    if (file !== null) takeDropped.current(file);
  }, []);

  return (
    <div
      className="hand-on"
      onDragOver={(event) => {
        event.preventDefault();
      }}
      onDrop={(event) => {
        event.preventDefault();
        take(event.dataTransfer.files[0]);
      }}
    >
      {props.intro}
      <div className="hand-on-drop">
        <p>{props.said}</p>
        {!isBusy && (
          <label className="file-button">
            <input
              type="file"
              accept={props.accept}
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = '';
                take(file);
              }}
            />
            <span>{props.chooseWords}</span>
          </label>
        )}
      </div>
      {props.children}
    </div>
  );
}
