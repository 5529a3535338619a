// Loaded together with the first part that comes later (later-part.tsx).
import './styles/later.css';
