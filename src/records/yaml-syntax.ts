/** Faults of the YAML itself, in words for somebody who has never read its specification. */
import type { YAMLError } from 'yaml';

export interface SyntaxFault {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

const duplicate = (key: string): SyntaxFault => ({
  code: 'duplicate-key',
  message: `The field "${key}" stands here a second time.`,
  remedy: 'Keep one of the two.',
});

const faults: Partial<Record<YAMLError['code'], SyntaxFault>> = {
  TAB_AS_INDENT: {
    code: 'tab-indent',
    message: 'This line is indented with a tab.',
    remedy: 'Indent with spaces: YAML does not allow tabs.',
  },
  BAD_INDENT: {
    code: 'bad-indent',
    message: 'The indentation of this line fits no line above it, or a bracket is left open.',
    remedy: 'Indent entries of one list equally, and close each "[" and "{".',
  },
  RESOURCE_EXHAUSTION: {
    code: 'nested-too-deep',
    message: 'Lists or fields are nested too deep to be read.',
    remedy: 'A record needs five levels at most. Look for brackets or dashes that run away.',
  },
  MULTIPLE_DOCS: {
    code: 'two-documents',
    message: 'A line of three dashes starts a second document here.',
    remedy: 'Take the line out: a record is one document.',
  },
  TAG_RESOLVE_FAILED: {
    code: 'yaml-tag',
    message: 'A word that begins with "!" is a YAML tag, and no tag is known here.',
    remedy: 'Take it out, or put the whole value in quotes.',
  },
  BAD_SCALAR_START: {
    code: 'quotes-needed',
    message: 'A value cannot begin with this character unless it stands in quotes.',
    remedy: 'Put the value in quotes.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    code: 'quotes-needed',
    message: 'There is a second colon in this line, or the next line is indented too far.',
    remedy: 'Put a value that has a colon in quotes; begin fields of one group in one column.',
  },
  MULTILINE_IMPLICIT_KEY: {
    code: 'colon-missing',
    message: 'This line, or the one before it, has no colon.',
    remedy: 'Write each field as "name: value".',
  },
  BAD_DQ_ESCAPE: {
    code: 'bad-escape',
    message: 'A backslash in double quotes is followed by a letter that means nothing.',
    remedy: "Use single quotes ('...'), in which a backslash is a backslash.",
  },
};

const other = (message: string): SyntaxFault => ({
  code: 'yaml-syntax',
  message: `The YAML cannot be read here (${message}).`,
  remedy: 'Compare the line with the examples in the README; put unusual text in quotes.',
});

const missing: readonly (readonly [RegExp, SyntaxFault])[] = [
  [
    /closing .?quote/,
    {
      code: 'quote-open',
      message: 'A quotation mark is opened and never closed.',
      remedy: 'Close it at the end of the value.',
    },
  ],
  [
    /map values/,
    {
      code: 'colon-missing',
      message: 'This line has no colon.',
      remedy: 'Write each field as "name: value", with a space after the colon.',
    },
  ],
];

/** The fault that the parser reports at some place in the text. */
export function syntaxFault(error: YAMLError, text: string): SyntaxFault {
  if (error.code === 'DUPLICATE_KEY') {
    const key = /^["']?([^:"'\n\r]{1,60})/.exec(text.slice(error.pos[0]))?.[1] ?? '';
    return duplicate(key.trim());
  }
  const named = missing.find(([pattern]) => pattern.test(error.message));
  if (error.code === 'MISSING_CHAR' && named) return named[1];
  return faults[error.code] ?? other(error.message.replace(/\.$/, ''));
}

/** What `toJS` throws on: an alias of nothing, or aliases that multiply without end. */
export function aliasFault(error: Error): SyntaxFault {
  const name = /be set before the alias\): (.{1,60})/.exec(error.message)?.[1];
  if (name !== undefined) {
    return {
      code: 'quotes-needed',
      message: `"*${name}" is a reference to something that was never named with "&${name}".`,
      remedy: 'Put a value that begins with an asterisk in quotes.',
    };
  }
  if (error.message.startsWith('Excessive alias count')) {
    return {
      code: 'too-many-aliases',
      message: 'References ("*name") to other references multiply this record beyond reading.',
      remedy: 'Write the values out instead of referring to them.',
    };
  }
  if (error instanceof RangeError) return faults.RESOURCE_EXHAUSTION!;
  return other(error.message);
}
