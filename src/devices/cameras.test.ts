import { afterEach, describe, expect, it, vi } from 'vitest';
import { cameraFailure, createCameras } from './cameras.js';

afterEach(() => {
  vi.unstubAllGlobals();
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
