import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FakeCamera } from '../../tests/support/fake-camera.js';
import { stubFakeCamera } from '../../tests/support/fake-camera.js';
import type { CameraChange, CameraStream, MeasuringFailure } from '../session/ports.js';
import { SILENCE_MS } from './camera-silence.js';
import { cameraFailure, createCameras } from './cameras.js';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('cameraFailure', () => {
  // names: W3C Media Capture and Streams, getUserMedia, steps that reject
  it.each([
    ['NotAllowedError', 'camera-refused'],
    ['SecurityError', 'camera-refused'],
    ['NotFoundError', 'camera-missing'],
    ['OverconstrainedError', 'camera-missing'],
    ['NotReadableError', 'camera-busy'],
    ['AbortError', 'camera-busy'],
    ['TypeError', 'camera-unsupported'],
  ])('reads %s as %s', (name, kind) => {
    expect(cameraFailure(new DOMException('x', name))).toEqual({ kind });
  });

  it('does not stumble over what is no exception', () => {
    expect(cameraFailure('refused')).toEqual({ kind: 'camera-unsupported' });
  });
});

describe('createCameras', () => {
  it('knows no camera where the browser offers none', async () => {
    vi.stubGlobal('navigator', {});
    expect(await createCameras().devices()).toEqual([]);
    expect(await createCameras().open(null)).toEqual({ ok: false, failure: { kind: 'camera-unsupported' } });
  });

  it('lists cameras and no microphones', async () => {
    const device = (kind: string, deviceId: string) => ({ kind, deviceId, label: deviceId, groupId: '' });
    const all = [device('audioinput', 'm'), device('videoinput', 'front'), device('videoinput', 'desk')];
    vi.stubGlobal('navigator', { mediaDevices: { enumerateDevices: () => Promise.resolve(all) } });
    expect((await createCameras().devices()).map(({ id }) => id)).toEqual(['front', 'desk']);
  });

  it('asks for the chosen camera in full resolution, and never for sound', async () => {
    const ask = vi.fn((_: MediaStreamConstraints) => Promise.reject(new DOMException('x', 'NotAllowedError')));
    vi.stubGlobal('navigator', { mediaDevices: { getUserMedia: ask } });
    expect(await createCameras().open('desk')).toEqual({ ok: false, failure: { kind: 'camera-refused' } });
    expect(ask).toHaveBeenCalledWith({
      audio: false,
      video: { deviceId: { exact: 'desk' }, width: { ideal: 1920 }, height: { ideal: 1080 } },
    });
    await createCameras().open(null);
    expect(ask.mock.calls[1]?.[0].video).not.toHaveProperty('deviceId');
  });
});

describe('an open camera', () => {
  let fake: FakeCamera;
  let camera: CameraStream;
  let ends: MeasuringFailure[];

  beforeEach(async () => {
    vi.useFakeTimers();
    fake = stubFakeCamera();
    const opened = await createCameras().open(null);
    if (!opened.ok) throw new Error(opened.failure.kind);
    camera = opened.value;
    ends = [];
    camera.onEnded((why) => ends.push(why));
  });

  /** Lets time go by with 15 frames a second, or with none. */
  async function pass(lengthMs: number, withFrames: boolean): Promise<void> {
    for (let ms = 0; ms < lengthMs; ms += 66) {
      if (withFrames) fake.frames(1);
      await vi.advanceTimersByTimeAsync(66);
    }
  }

  it('that is unplugged says so, once, and to whoever asks later as well', async () => {
    fake.end();
    await vi.advanceTimersByTimeAsync(1_000);
    expect(ends).toEqual([{ kind: 'camera-unplugged' }]);
    camera.onEnded((why) => ends.push(why));
    await vi.advanceTimersByTimeAsync(0);
    expect(ends).toHaveLength(2);
    expect(await camera.takeFrame()).toEqual({ ok: false, failure: { kind: 'camera-unplugged' } });
  });

  it.each<PermissionState>(['denied', 'prompt'])(
    'whose permission became “%s” is refused, not unplugged',
    async (state) => {
      fake.end();
      // browsers tell of the permission a moment later
      await vi.advanceTimersByTimeAsync(20);
      fake.setPermission(state);
      await vi.advanceTimersByTimeAsync(1_000);
      expect(ends).toEqual([{ kind: 'camera-refused' }]);
    },
  );

  it('that gives no picture for three seconds says so', async () => {
    await pass(10_000, true);
    expect(ends).toEqual([]);
    await pass(SILENCE_MS - 600, false);
    expect(ends).toEqual([]);
    await pass(1_200, false);
    expect(ends).toEqual([{ kind: 'camera-silent' }]);
  });

  it('is not expected to give pictures to a page that nobody sees', async () => {
    await pass(2_000, true);
    fake.setHidden(true);
    await pass(60_000, false);
    fake.setHidden(false);
    await pass(SILENCE_MS - 600, false);
    expect(ends).toEqual([]);
    await pass(1_200, false);
    expect(ends).toEqual([{ kind: 'camera-silent' }]);
  });

  it('is watched no more once it was stopped', async () => {
    camera.stop();
    await pass(10_000, false);
    expect(ends).toEqual([]);
    expect(fake.isStopped()).toBe(true);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('waits with a burst while the page is hidden, and gives up where no frame comes although it is seen', async () => {
    const outcomes: unknown[] = [];
    fake.setHidden(true);
    void camera.takeBurst(5, null).then((outcome) => outcomes.push(outcome));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(outcomes).toEqual([]);
    fake.setHidden(false);
    await vi.advanceTimersByTimeAsync(6_000);
    expect(outcomes).toEqual([{ ok: false, failure: { kind: 'camera-silent' } }]);
  });
});

describe('the watch over cameras', () => {
  it('tells of devices and of the permission until it is ended', async () => {
    const fake = stubFakeCamera();
    const changes: CameraChange[] = [];
    const abort = new AbortController();
    await createCameras().watchChanges((change) => changes.push(change), abort.signal);
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    fake.setPermission('denied');
    fake.setPermission('granted');
    const all = [
      { kind: 'devices' },
      { kind: 'permission', isGranted: false },
      { kind: 'permission', isGranted: true },
    ];
    expect(changes).toEqual(all);
    abort.abort();
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    fake.setPermission('denied');
    expect(changes).toEqual(all);
  });
});
