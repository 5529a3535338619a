import type { SpokenPrompts } from '../session/spoken-prompts.js';

/** The browser's own reading aloud, where it has any. Voices that a server speaks are left alone: they would be sent the text. */
export function createSpokenPrompts(): SpokenPrompts {
  const synthesis = 'speechSynthesis' in globalThis ? globalThis.speechSynthesis : null;
  const voiceFor = (tag: string): SpeechSynthesisVoice | null => {
    const own = synthesis?.getVoices().filter(({ localService }) => localService) ?? [];
    return (
      own.find(({ lang }) => normal(lang) === normal(tag)) ??
      own.find(({ lang }) => languageOf(lang) === languageOf(tag)) ??
      null
    );
  };
  return {
    canSpeak: (tag) => voiceFor(tag) !== null,
    say: (text, tag) => {
      const voice = voiceFor(tag);
      if (synthesis === null || voice === null) return;
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.voice = voice;
      utterance.lang = voice.lang;
      synthesis.cancel();
      synthesis.speak(utterance);
    },
    stop: () => {
      synthesis?.cancel();
    },
    onVoices: (listener) => {
      synthesis?.addEventListener('voiceschanged', listener);
      return () => {
        synthesis?.removeEventListener('voiceschanged', listener);
      };
    },
  };
}

/** Some systems write `de_DE`. */
function normal(tag: string): string {
  return tag.replace('_', '-').toLowerCase();
}

function languageOf(tag: string): string {
  return normal(tag).split('-', 1).join('');
}
