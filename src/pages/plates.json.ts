/** The records of all plates for programs. */
import type { APIRoute } from 'astro';
import { plateRows } from '../components/exhibit-documents.ts';
import { jsonDocument } from '../components/manifest-parts.ts';

export const GET: APIRoute = async () => jsonDocument(await plateRows(), 'application/json');
